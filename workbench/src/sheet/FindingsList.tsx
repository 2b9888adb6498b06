import type { Finding } from '@bloomrail/engine/outcome/finding';
import { memo } from 'react';
import { Link } from 'wouter';
import type { Station } from '../compute/progress.ts';
import { DiamondInText } from '../ink/Diamond.tsx';
import { bySeriousness } from '../line/line-model.ts';
import { stationAddress } from '../page/address.ts';
import { takeHoldOf } from './named-setting.ts';
import { ownerOf } from './setting-owner.ts';

/** What a person should know here: what, value, limit; then what to change. Good is quiet. */
export const FindingsList = memo(function FindingsList({
  findings,
  stations,
  here,
}: {
  findings: readonly Finding[];
  stations: readonly Station[];
  here: string;
}) {
  return (
    <section aria-keyshortcuts="f" tabIndex={-1}>
      <h2>Findings</h2>
      {findings.length === 0 && <p className="quiet">None at this station.</p>}
      <ul className="findings">
        {[...findings].sort(bySeriousness).map((finding) => (
          <li key={finding.check + finding.text}>
            <DiamondInText level={finding.level} />
            <span>
              <span className="hidden">{finding.level}: </span>
              <span className="finding">{finding.text}</span>{' '}
              <Advice
                finding={finding}
                owner={finding.setting && ownerOf(finding.setting, stations)}
                here={here}
              />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
});

interface AdviceProps {
  readonly finding: Finding;
  /** The station where the setting is moved. */
  readonly owner: string | undefined;
  readonly here: string;
}

/** Advice that names a setting leads to it, here or at the station where it is moved. */
function Advice({ finding: { advice, setting }, owner, here }: AdviceProps) {
  if (!setting || !owner) return advice;
  if (owner !== here) {
    return (
      <Link className="act" href={`${stationAddress(owner)}?setting=${encodeURIComponent(setting)}`}>
        {advice} To {owner}
      </Link>
    );
  }
  return (
    <button type="button" className="act" style={{ textAlign: 'left' }} onClick={() => takeHoldOf(setting)}>
      {advice}
    </button>
  );
}
