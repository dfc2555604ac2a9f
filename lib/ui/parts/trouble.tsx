/** What went wrong and what to do; nothing when nothing did. */
export function Trouble({ text }: { text: string | null }) {
  return text === null ? null : (
    <p class="trouble" role="alert">
      {text}
    </p>
  );
}
