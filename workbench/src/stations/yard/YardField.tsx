import type { YardRecord } from '@bloomrail/engine/stations/yard/record';
import { heatColour } from '../../ink/heat-scale.ts';
import { figure } from '../../ink/numbers.ts';
import { counted } from '../../ink/words.ts';
import { useWidth } from '../../page/use-width.ts';
import { BundlePicture } from './BundlePicture.tsx';
import { CutBar, type Part } from './CutBar.tsx';

/** How the straight bars are cut, and how the rails are bundled and lifted. */
export function YardField({ record }: { record: YardRecord }) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  const colour = heatColour(record.leaving.places.middle.mean);
  return (
    <div ref={ref}>
      <h2>Cuts of one bar</h2>
      {record.patterns.map((pattern) => (
        <div key={pattern.rails.join(' ')}>
          <p className="quiet">
            <b>{counted(pattern.bars, 'bar')}</b>, {counted(pattern.rails.length, 'rail')} from each,{' '}
            {figure(pattern.remnant, 'm', 2)} m left
          </p>
          <CutBar
            width={width}
            length={pattern.rails.reduce((a, b) => a + b, 0) + pattern.remnant}
            parts={partsOf(pattern, colour)}
            sentence={`${counted(pattern.rails.length, 'rail')} from one bar, ${figure(pattern.remnant, 'm', 2)} m left`}
          />
        </div>
      ))}
      <h2>Bundles</h2>
      <div style={{ display: 'flex', flexWrap: 'wrap', gap: '16px 40px', marginTop: 8 }}>
        {record.bundles.map((bundle) => (
          <BundlePicture key={bundle.length} bundle={bundle} outline={record.leaving.outline} />
        ))}
      </div>
    </div>
  );
}

const partsOf = ({ rails, remnant }: YardRecord['patterns'][number], colour: string): Part[] => [
  ...rails.map((length, i) => ({ name: `rail ${i + 1}`, length, colour })),
  ...(remnant > 0 ? [{ name: 'left', length: remnant }] : []),
];
