// Area and stiffness of 60E1 from its exact outline of lines and arcs.
import { outlineOf, profileNamed, sectionProperties } from '@bloomrail/engine';

const profile = profileNamed('60E1');
if (!profile) throw new Error('60E1 is not in the library');
const outline = outlineOf(profile);
if (!outline.ok) throw new Error(outline.failure.reason);

const { area, ix, centroid } = sectionProperties(outline.value);
console.log(
  `area ${(area * 1e4).toFixed(2)} cm², Ix ${(ix * 1e8).toFixed(1)} cm⁴, axis ${(centroid.y * 1e3).toFixed(1)} mm above the foot`,
);
