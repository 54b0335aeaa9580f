/** Give a file out, take one in. */
import { useRef } from 'react';
import { Target } from '../parts/Target.tsx';

interface FileTargetsProps {
  readonly what: string;
  readonly onExport: () => void;
  readonly onImport: (text: string) => void;
}

export function FileTargets({ what, onExport, onImport }: FileTargetsProps) {
  const input = useRef<HTMLInputElement>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (file !== undefined) onImport(await file.text());
    if (input.current !== null) input.current.value = '';
  };
  return (
    <>
      <Target onPress={onExport}>Save {what} as a file</Target>
      <Target onPress={() => input.current?.click()}>Take {what} from a file</Target>
      <input
        ref={input}
        type="file"
        accept="application/json,.json"
        aria-label={`File of ${what}`}
        hidden
        onChange={(event) => void take(event.target.files?.[0])}
      />
    </>
  );
}
