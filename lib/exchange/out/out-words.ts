/** The words around what goes out, in the language of the student. */
export interface OutWords {
  /** Below the title: what it is and of which day. */
  about: string;
  /** Clips are for one's own study. */
  studyNote: string;
  question: string;
  answer: string;
  marks(count: number): string;
  ownWords: string;
  unclear: string;
  from: string;
  licence: string;
  keptOn(at: number): string;
  /** A source without a title, such as the student's own notes. */
  ownNotes(at: number): string;
  /** The heading of clips without a topic. */
  untagged: string;
  pictureGone: string;
}

/** A picture on its way out. */
export interface OutPicture {
  /** Its bytes as a data URL. */
  address: string;
  alt: string;
  width: number;
  height: number;
}
