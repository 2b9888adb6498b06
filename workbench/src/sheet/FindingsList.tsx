import type { Finding } from '@bloomrail/engine/outcome/finding';
import { DiamondInText } from '../ink/Diamond.tsx';
import { bySeriousness } from '../line/line-model.ts';

/** What a person should know here: what, value, limit; then what to change. Good is quiet. */
export function FindingsList({
  findings,
  paths,
}: {
  findings: readonly Finding[];
  paths: ReadonlySet<string>;
}) {
  return (
    <section>
      <h2>Findings</h2>
      {findings.length === 0 && <p className="quiet">None at this station.</p>}
      <ul className="findings">
        {[...findings].sort(bySeriousness).map((finding) => (
          <li key={finding.check + finding.text}>
            <DiamondInText level={finding.level} />
            <span>
              <span className="hidden">{finding.level}: </span>
              <span className="finding">{finding.text}</span>{' '}
              <Advice finding={finding} here={finding.setting !== undefined && paths.has(finding.setting)} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Advice that names a setting of this station leads to it. */
function Advice({ finding: { advice, setting }, here }: { finding: Finding; here: boolean }) {
  if (!setting || !here) return advice;
  return (
    <button type="button" className="act" style={{ textAlign: 'left' }} onClick={() => focusSetting(setting)}>
      {advice}
    </button>
  );
}

function focusSetting(path: string): void {
  document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path)}"]`)?.focus();
}
