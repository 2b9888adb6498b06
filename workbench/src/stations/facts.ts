import type { StationRecord } from '@bloomrail/engine/bar/station';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import { clock, figure } from '../ink/numbers.ts';
import { known } from './FieldOf.tsx';

/** One line of facts beside a station's title. */
export function factsOf(station: StationRecord): string {
  const record = known(station);
  switch (record.kind) {
    case 'furnace':
      return `${figure(record.bloomsInside, 'one', 0)} blooms inside, ${figure(record.residence, 'min', 0)} min, bloom of ${figure(record.balance.massInKg, 't')} t`;
    case 'descaler':
      return `${figure(record.waterFlow, 'lPerMin')} l/min at ${figure(record.impact, 'MPa', 2)} MPa on the steel, ${figure(record.underJet, 's', 2)} s under the jets`;
    case 'pass':
      return passFacts(record);
    case 'saws':
      return `bar of ${figure(record.lengthIn, 'm')} m, ${record.hotPieces.length} pieces, ${figure(record.shrinkage, 'percent', 2)} % shorter when cold`;
    case 'cooling-bed':
      return `${record.barsOnBed} bars on the bed, leaves ${clock(record.leavesAt)} after the last pass, ${figure(record.coldLength, 'm')} m`;
    case 'straighteners':
      return `${record.height.rollers.length} and ${record.side.rollers.length} rollers, ${figure(record.height.power + record.side.power, 'kW')} kW into bending`;
    case 'yard':
      return `${figure(record.bars, 'one', 0)} bars for ${figure(record.ordered, 't', 0)} t, ${figure(record.massPerMetre, 'kgPerM')} kg/m, yield ${figure(record.yield, 'percent')} %`;
  }
}

function passFacts({ entry, exit, firstEnd, stand, groove, leaving }: PassRecord): string {
  const { mean, surface, core } = leaving.places.middle;
  return [
    `${firstEnd} first through ${groove} of ${stand}`,
    `${figure(entry.area, 'mm2')} to ${figure(exit.area, 'mm2')} mm²`,
    `${figure(entry.length, 'm')} to ${figure(exit.length, 'm')} m`,
    `mean ${figure(mean, 'C')} °C, surface ${figure(surface, 'C')}, core ${figure(core, 'C')}`,
  ].join(', ');
}
