interface FileButtonProps {
  id: string;
  label: string;
  /** What the browser's own window offers first; everything unless given. */
  accept?: string;
  multiple?: boolean;
  /** Called with what was chosen: at least one. */
  open(files: File[]): void;
}

/** A button that lets the student choose files of their own. */
export function FileButton({ id, label, accept, multiple = false, open }: FileButtonProps) {
  return (
    <span class="field file">
      <label for={id} class="button">
        {label}
      </label>
      <input
        id={id}
        class="unseen"
        type="file"
        multiple={multiple}
        {...(accept !== undefined && { accept })}
        onChange={(event) => {
          const field = event.currentTarget;
          const files = [...(field.files ?? [])];
          if (files.length > 0) open(files);
          // The same file may be opened again after it was put right.
          field.value = '';
        }}
      />
    </span>
  );
}
