import { bench } from 'vitest';
import { must } from '../../outcome/result.ts';
import { furnace } from '../furnace/furnace.ts';
import { bloom, fourHours, walkingBeam } from '../furnace/walking-beam.fixture.ts';
import { descaler } from './descaler.ts';
import { atSpeed, ring } from './rings.fixture.ts';

const hot = must(furnace(bloom(), fourHours, walkingBeam)).bar;

bench('a bloom through the descaler, three places', () => {
  must(descaler(hot, atSpeed, ring));
});
