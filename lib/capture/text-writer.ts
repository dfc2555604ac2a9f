/** Puts text together line by line, collapsing white space as CSS `white-space: normal` does. */
export class TextWriter {
  private readonly lines: string[] = [];
  private line = '';
  /** White space seen but not yet written, since a line neither begins nor ends with it. */
  private space = false;
  /** A list item's marker that waits for the item's first text. */
  private marker = '';
  private depth = 0;
  private preserved = false;

  /** Running text. */
  text(data: string): void {
    if (this.preserved) return this.preservedText(data);
    // No-break spaces are kept: only the white space that CSS collapses.
    const words = data.replace(/[\t\n\f\r ]+/g, ' ');
    const bare = words.replace(/^ | $/g, '');
    if (words.startsWith(' ')) this.space = true;
    if (bare === '') return;
    this.exact((this.space && this.line !== '' ? ' ' : '') + bare);
    this.space = words.endsWith(' ');
  }

  /** Text as it is, on the present line. */
  exact(text: string): void {
    if (text === '') return;
    if (this.line === '' && this.depth > 0) this.line = this.indent();
    this.line += text;
  }

  newLine(): void {
    this.lines.push(this.line);
    this.line = '';
    this.space = false;
  }

  /** Content that begins and ends a line. */
  block(write: () => void): void {
    this.breakLine();
    write();
    this.breakLine();
  }

  item(marker: string, write: () => void): void {
    this.breakLine();
    this.depth++;
    this.marker = marker;
    write();
    this.breakLine();
    this.marker = '';
    this.depth--;
  }

  /** Content whose white space counts. */
  verbatim(write: () => void): void {
    const outer = this.preserved;
    this.preserved = true;
    write();
    this.preserved = outer;
  }

  finish(): string {
    this.breakLine();
    return this.lines
      .map((line) => line.trimEnd())
      .join('\n')
      .replace(/\n{3,}/g, '\n\n')
      .trim();
  }

  private breakLine(): void {
    if (this.line !== '') this.newLine();
    this.space = false;
  }

  private preservedText(data: string): void {
    const [first = '', ...rest] = data.replace(/\r\n?/g, '\n').split('\n');
    this.exact(first);
    for (const line of rest) {
      this.newLine();
      this.exact(line);
    }
  }

  private indent(): string {
    const { marker } = this;
    this.marker = '';
    // Later lines of an item, and items within it, stand under its text.
    return marker === '' ? '  '.repeat(this.depth) : '  '.repeat(this.depth - 1) + marker;
  }
}
