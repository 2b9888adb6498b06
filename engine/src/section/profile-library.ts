import e49 from '../../../reference/profiles/49E1.json' with { type: 'json' };
import e54 from '../../../reference/profiles/54E1.json' with { type: 'json' };
import e60 from '../../../reference/profiles/60E1.json' with { type: 'json' };
import e60relieved from '../../../reference/profiles/60E2.json' with { type: 'json' };
import re115 from '../../../reference/profiles/115RE.json' with { type: 'json' };
import re119 from '../../../reference/profiles/119RE.json' with { type: 'json' };
import re132 from '../../../reference/profiles/132RE.json' with { type: 'json' };
import re136 from '../../../reference/profiles/136RE.json' with { type: 'json' };
import re136flat from '../../../reference/profiles/136RE-8.json' with { type: 'json' };
import a75 from '../../../reference/profiles/A75.json' with { type: 'json' };
import a100 from '../../../reference/profiles/A100.json' with { type: 'json' };
import a120 from '../../../reference/profiles/A120.json' with { type: 'json' };
import as60 from '../../../reference/profiles/AS60.json' with { type: 'json' };
import r50 from '../../../reference/profiles/R50.json' with { type: 'json' };
import r65 from '../../../reference/profiles/R65.json' with { type: 'json' };
import r75 from '../../../reference/profiles/R75.json' with { type: 'json' };
import type { Result } from '../outcome/result.ts';
import type { Outline } from './outline.ts';
import { craneOutline } from './profile/crane-construction.ts';
import { Profile } from './profile/profile.ts';
import { railOutline } from './profile/rail-construction.ts';

const files = [
  e60,
  e60relieved,
  e54,
  e49,
  r50,
  r65,
  r75,
  as60,
  re115,
  re119,
  re132,
  re136,
  re136flat,
  a75,
  a100,
  a120,
] as readonly unknown[];

/** Every profile of reference/profiles, read through the same schema as a user's own. */
const profiles: readonly Profile[] = files.map((file) => Profile.parse(file));

export const profileNames: readonly string[] = profiles.map(({ name }) => name);

/** A profile of the library; undefined when there is none of that name. */
export const profileNamed = (name: string): Profile | undefined =>
  profiles.find((profile) => profile.name === name);

/**
 * The cold outline, upright: x across from the axis, y up from the foot's underside. A user's own dimensions may be
 * impossible; the failure names the joint that cannot be made tangent.
 */
export const outlineOf = (profile: Profile): Result<Outline> =>
  profile.family === 'crane' ? craneOutline(profile.dimensions) : railOutline(profile.dimensions);
