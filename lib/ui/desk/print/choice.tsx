interface ChoiceProps<V extends string> {
  id: string;
  label: string;
  value: V;
  /** Values with their names. */
  options: readonly (readonly [V, string])[];
  choose(value: V): void;
}

/** One of a few, with its name above. */
export function Choice<V extends string>({ id, label, value, options, choose }: ChoiceProps<V>) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value as V)}>
        {options.map(([one, name]) => (
          <option key={one} value={one}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}
