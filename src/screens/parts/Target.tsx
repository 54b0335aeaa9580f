/** Everything that is touched: a plain button, large enough for a knuckle. */
import type { ReactNode } from 'react';

export interface TargetProps {
  readonly children: ReactNode;
  readonly onPress: () => void;
  readonly look?: 'plain' | 'main' | 'warn' | 'quiet';
  readonly size?: 'plain' | 'big' | 'giant';
  readonly icon?: ReactNode;
  /** Spoken name when the visible words alone would not do. */
  readonly name?: string;
  /** Would be refused now: still takes a press, so that the app can say why. */
  readonly refused?: boolean;
  readonly chosen?: boolean;
  /** Digit key that does the same. */
  readonly digit?: number;
}

export function Target({ children, onPress, look = 'plain', size = 'plain', icon, name, ...state }: TargetProps) {
  const { refused, chosen, digit } = state;
  return (
    <button
      type="button"
      className={`target target-${look} target-${size}`}
      onClick={onPress}
      {...(name === undefined ? {} : { 'aria-label': name })}
      {...(refused === true ? { 'aria-disabled': true } : {})}
      {...(chosen === undefined ? {} : { 'aria-pressed': chosen })}
    >
      {digit === undefined ? null : (
        <kbd className="target-digit" aria-hidden="true">
          {digit}
        </kbd>
      )}
      {icon}
      <span className="target-words">{children}</span>
    </button>
  );
}
