/** One line to type in, with what it is for. */
interface FieldProps {
  readonly label: string;
  /** Empty: there is nothing to add. */
  readonly hint: string;
  readonly value: string;
  readonly maxLength: number;
  readonly onChange: (value: string) => void;
}

export function Field({ label, hint, value, maxLength, onChange }: FieldProps) {
  return (
    <label className="field">
      <span>{label}</span>
      {hint === '' ? null : <span className="field-hint">{hint}</span>}
      <input
        type="text"
        value={value}
        maxLength={maxLength}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}
