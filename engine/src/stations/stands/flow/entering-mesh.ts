import { carried } from '../../../bar/carry.ts';
import type { Field } from '../../../outcome/field.ts';
import { ok, type Result } from '../../../outcome/result.ts';
import { quadMeshOfAbout } from '../../../phenomena/metal-flow/meshing/quads.ts';
import { transferred } from '../../../phenomena/metal-flow/meshing/transfer.ts';
import { triMeshOf, type WholeMesh } from '../../../phenomena/metal-flow/meshing/whole.ts';
import type { QuadMesh } from '../../../phenomena/metal-flow/quad-mesh.ts';
import type { HeatingLaw } from '../../../steel/heating.ts';
import type { Prepared } from '../prepare.ts';
import { computedLines } from './computed-lines.ts';

/** The entering section as metal flow sees it: its computed part, and the whole with nodes in the same order. */
export interface EnteringMesh {
  readonly part: QuadMesh;
  readonly whole: WholeMesh;
}

/** About so many nodes in the computed part; fails where the section cannot be meshed. */
export function enteringMesh({ entry, rolls }: Prepared, nodes: number): Result<EnteringMesh> {
  const part = quadMeshOfAbout(entry.outline, computedLines(entry.outline, rolls.rolls), nodes);
  return part.ok ? ok({ part: part.value, whole: triMeshOf(part.value) }) : part;
}

/** Temperature fields of the bar on the whole entering section; the heat of each is kept. */
export const onWhole = (
  { entry }: Prepared,
  { whole }: EnteringMesh,
  fields: readonly Field[],
  law: HeatingLaw,
) => carried(entry.mesh, whole, (x, y) => [x, y], fields, law);

/** A field of the whole section on its computed part: each node takes the mean of itself and its images. */
export function onPart({ part, whole }: EnteringMesh, field: Field): Float64Array {
  const nodes = part.xy.length / 2;
  const [sum, images] = [new Float64Array(nodes), new Float64Array(nodes)];
  for (let i = 0; i < field.length; i++) {
    sum[whole.part[i]] += field[i];
    images[whole.part[i]]++;
  }
  return sum.map((value, node) => value / images[node]);
}

/** A field of the computed part on the whole section. */
export const onImages = ({ part }: Pick<WholeMesh, 'part'>, field: Field): Float64Array =>
  Float64Array.from(part, (node) => field[node]);

/** Strain on the computed part that the steel still remembers: a share of what the bar came with. */
export function rememberedStrain(
  { entry }: Prepared,
  { part }: EnteringMesh,
  strain: Field | undefined,
  share: number,
): Float64Array {
  const nodes = part.xy.length / 2;
  if (!strain || share === 0) return new Float64Array(nodes);
  return transferred(entry.mesh, part, [strain])[0].map((each) => share * each);
}
