import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { accepted } from './accept.ts';
import { biteOf, levelOf } from './bite.ts';
import { marchRoom } from './march-room.ts';
import { marchUntilSettled } from './march-until.ts';
import { flatPass, plainSteel } from './passes.fixture.ts';
import { firstGuess } from './refine-level.ts';

test('a march in which single slices did not settle is no answer, however well the whole settled', () => {
  const bar = { h0: 0.06, h1: 0.048, b0: 0.06, R: 0.3, speed: 2, friction: 0.35 };
  const bite = biteOf(
    flatPass(bar, { part: 'quarter', nodes: 60, steel: plainSteel, wishes: { slices: 8 } }),
  );
  if (!bite) throw new Error('the rolls do not reach the bar');
  const level = levelOf(bite, 8, 2);
  firstGuess(bite, level);
  const wishes = { most: 25, isRough: false, extrapolation: 0, progress: () => true };
  const outcome = marchUntilSettled(bite, level, marchRoom(bite), wishes);
  const last = must(accepted(bite, outcome, outcome.marches));

  const march = { ...last.march, unsettled: 2, residual: 0.04 };
  const refused = accepted(bite, { ...outcome, last: { ...last, march } }, outcome.marches);
  expect(refused).toMatchObject({
    ok: false,
    failure: { reason: '2 of 10 slices do not settle', residual: 0.04 },
  });
});
