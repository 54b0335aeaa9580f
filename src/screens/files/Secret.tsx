/** One line that is not shown while it is typed. */
interface SecretProps {
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

export function Secret({ label, hint, value, onChange }: SecretProps) {
  return (
    <label className="field">
      <span>{label}</span>
      {hint === undefined ? null : <span className="field-hint">{hint}</span>}
      <input
        type="password"
        value={value}
        maxLength={200}
        autoComplete="new-password"
        spellCheck={false}
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}
