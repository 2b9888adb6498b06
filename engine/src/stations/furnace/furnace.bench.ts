import { bench } from 'vitest';
import { must } from '../../outcome/result.ts';
import { furnace } from './furnace.ts';
import { bloom, fourHours, walkingBeam } from './walking-beam.fixture.ts';

const cold = bloom();

bench('four hours in the furnace, about 200 nodes', () => {
  must(furnace(cold, fourHours, walkingBeam));
});
