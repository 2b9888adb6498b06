import type { SawRecord } from '@bloomrail/engine/stations/saws/record';
import { heatColour } from '../../ink/heat-scale.ts';
import { figure } from '../../ink/numbers.ts';
import { counted } from '../../ink/words.ts';
import { useWidth } from '../../page/use-width.ts';
import { CutBar, type Part } from '../yard/CutBar.tsx';

/** The bar as the hot saw divides it, head at left, to scale along the bar. */
export function SawField({ record }: { record: SawRecord }) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  const colour = heatColour(record.leaving.places.middle.mean);
  return (
    <div ref={ref} className="block">
      <CutBar
        width={width}
        length={record.lengthIn}
        parts={partsOf(record, colour)}
        sentence={`${counted(record.hotPieces.length, 'piece')} from ${figure(record.lengthIn, 'm')} m of hot bar.`}
      />
      <p className="caption">
        Hot lengths in m, head at left; pieces in their heat, crops and what is left over open. Kerfs together{' '}
        {figure(record.kerfs, 'mm')} mm. Cold lengths:{' '}
        {record.coldPieces.map((piece) => figure(piece, 'm', 2)).join(', ')} m.
      </p>
    </div>
  );
}

/** In the order they lie along the bar. */
function partsOf(record: SawRecord, colour: string): Part[] {
  const { headCrop, samples, hotPieces, remainder, tailCrop } = record;
  return [
    { name: 'head crop', length: headCrop },
    { name: 'test pieces', length: samples },
    ...hotPieces.map((length, i) => ({ name: `piece ${i + 1}`, length, colour })),
    { name: 'left over', length: remainder },
    { name: 'tail crop', length: tailCrop },
  ].filter(({ length }) => length > 0);
}
