/** The case digest as text and as a code to be read, as on paper: it shows whether a file is the one handed over. */
import type { CaseCode as Code } from '../../app/files.types.ts';

/** White modules that readers want around the code. */
const EDGE = 4;

export function CaseCode({ code }: { readonly code: Code }) {
  const whole = code.size + 2 * EDGE;
  return (
    <section className="sheet-code" aria-labelledby="sheet-code">
      <svg
        role="img"
        aria-label="QR code of the case digest"
        viewBox={`${-EDGE} ${-EDGE} ${whole} ${whole}`}
        shapeRendering="crispEdges"
      >
        <path d={code.path} fill="#000" />
      </svg>
      <div>
        <h2 id="sheet-code">Case digest</h2>
        <p>SHA-256 of the case as it stands. A case file with another digest is another case file.</p>
        <code>{code.value}</code>
      </div>
    </section>
  );
}
