import type { StationRecord } from '@bloomrail/engine/bar/station';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import { clock, figure } from '../ink/numbers.ts';
import { counted } from '../ink/words.ts';
import { known } from './FieldOf.tsx';

/** One line of facts beside a station's title. */
export function factsOf(station: StationRecord): string {
  const record = known(station);
  switch (record.kind) {
    case 'furnace':
      return `${counted(record.bloomsInside, 'bloom')} inside, ${figure(record.residence, 'min', 0)} min, bloom of ${figure(record.balance.massInKg, 't')} t`;
    case 'descaler':
      return `${figure(record.waterFlow, 'lPerMin')} l/min at ${figure(record.impact, 'MPa', 2)} MPa on the steel, ${figure(1000 * record.underJet, 'one', 1)} ms under the jets`;
    case 'pass':
      return passFacts(record);
    case 'saws':
      return `bar of ${figure(record.lengthIn, 'm')} m, ${counted(record.hotPieces.length, 'piece')}, ${figure(record.shrinkage, 'percent', 2)} % shorter when cold`;
    case 'cooling-bed':
      return `${counted(record.barsOnBed, 'bar')} on the bed, leaves ${clock(record.leavesAt)} after the last pass, ${figure(record.coldLength, 'm')} m`;
    case 'straighteners':
      return `${record.height.rollers.length} and ${record.side.rollers.length} rollers, ${figure(record.height.power + record.side.power, 'kW')} kW into bending`;
    case 'yard':
      return `${counted(record.bars, 'bar')} for ${figure(record.ordered, 't', 0)} t, ${figure(record.massPerMetre, 'kgPerM')} kg/m, yield ${figure(record.yield, 'percent')} %`;
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
