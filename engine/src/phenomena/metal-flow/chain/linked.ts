import type { ChainLink, LinkRoom, SolvedSlice } from './link.ts';
import { addContacts } from './link-contacts.ts';
import { addElements } from './link-elements.ts';
import type { LinkLayout } from './link-layout.ts';
import { addNodes } from './link-nodes.ts';
import { sliceShapes } from './slice-shapes.ts';

/** Links a solved slice to the one before it. */
export function chainLink(
  layout: LinkLayout,
  slice: SolvedSlice,
  before: ChainLink | undefined,
  linking: LinkRoom,
): ChainLink {
  const { task, warping, along, velocity, was, room, length } = slice;
  const link: ChainLink = {
    ...{ layout, length, before: before?.shapes },
    shapes: sliceShapes(task, warping.modes, along, velocity, was, room),
    slope: new Float64Array(layout.size),
    curvature: new Float64Array(layout.size * layout.size),
  };
  addElements(slice, link, linking);
  addNodes(slice, link, linking);
  addContacts(slice, link);
  link.slope[layout.along] -= task.pull;
  return link;
}
