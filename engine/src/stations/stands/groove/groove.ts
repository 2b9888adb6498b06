import { z } from 'zod';
import { OutlineFile } from '../../../section/outline-file.ts';
import { choice, group, optionalQuantity, quantity } from '../../../units/group.ts';

/**
 * What is turned into a pair of rolls, as its drawing states it. Everything is given at the groove's own gap; screwing
 * the rolls apart moves the halves. x runs along the rolls, y across the gap; both halves are alike.
 *
 *            y  ↑      top roll
 *     ───╮      │      ╭───────  collar, half the gap above the axis
 *        │wall  │      │
 *        ╰──────┼──────╯  bottom, half the height
 *     ──────────┼───────────→ x
 */
const name = {
  name: z.string().min(1),
  spread: optionalQuantity('one', 'Measured over computed spread in this groove', 0, 4),
};
const size = (title: string, most = 700) => quantity('mm', title, 0, most);
const place = (title: string) => quantity('mm', title, -600, 600);
const angle = (title: string) => quantity('deg', title, 1, 75);
const oneIn = (title: string) => quantity('one', title, 1.2, 60);
const draft = (title: string) => quantity('one', title, 0, 1);

export const FlatGroove = group(
  {
    family: z.literal('flat'),
    ...name,
    gap: size('Gap between the barrels'),
    width: size('Flat barrel', 3000),
  },
  'Plain barrel.',
);
export type FlatGroove = z.output<typeof FlatGroove>;

export const BoxGroove = group(
  {
    family: z.literal('box'),
    ...name,
    gap: size('Gap between the collars'),
    height: size('Height at this gap'),
    bottom: size('Bottom width, before rounding'),
    wall: draft('Wall slope, sideways per depth'),
    bottomRadius: size('Radius at the bottom', 100),
    collarRadius: size('Radius at the collar', 100),
  },
  'Box groove.',
);
export type BoxGroove = z.output<typeof BoxGroove>;

/** Notching and forming grooves, and the edger's: a notch over the web between the foot and head chambers. */
export const FormerGroove = group(
  {
    family: z.literal('former'),
    ...name,
    gap: size('Gap between the collars'),
    web: size('Web thickness at this gap'),
    webFootEnd: place('Web flat, end at the foot, before rounding'),
    webHeadEnd: place('Web flat, end at the head, before rounding'),
    footFlank: angle('Foot flank, from the gap direction'),
    headFlank: angle('Head flank, from the gap direction'),
    footHalf: size('Foot chamber, half height'),
    headHalf: size('Head chamber, half height'),
    headTaper: size('Head chamber, half height less at the wall', 50),
    footWall: place('Foot wall at the collar'),
    headWall: place('Head wall at the collar'),
    wall: draft('Wall slope, sideways per depth'),
    footWebRadius: size('Radius between web and foot flank', 100),
    headWebRadius: size('Radius between web and head flank', 100),
    flankRadius: size('Radius between flank and bottom', 100),
    footBottomRadius: size('Radius between foot bottom and wall', 100),
    headBottomRadius: size('Radius between head bottom and wall', 100),
    collarRadius: size('Radius at the collar', 100),
  },
  'Notching, forming or edging groove.',
);
export type FormerGroove = z.output<typeof FormerGroove>;

/** Two horizontal rolls over the web, two vertical rolls on foot and head. */
export const UniversalGroove = group(
  {
    family: z.literal('universal'),
    ...name,
    gap: size('Web thickness, gap of the horizontal rolls'),
    webFootEnd: place('Foot flank line at the web face'),
    webHeadEnd: place('Head flank line at the web face'),
    footSlope: oneIn('Foot flank, 1 in'),
    headSlope: oneIn('Head flank, 1 in'),
    webRadius: size('Radius at the web', 100),
    toeHalf: size('Second foot flank begins at half height'),
    toeSlope: oneIn('Second foot flank, 1 in'),
    toeRadius: size('Radius between the foot flanks', 500),
    rollEdge: size('Half height where the roll ends'),
    footRoll: place('Face of the foot roll'),
    headRoll: place('Face of the head roll on the axis'),
    headCorner: size('Head groove, half width at the bottom'),
    headDrop: size('Head groove, bottom less deep at the corner', 50),
    headMouth: size('Head groove, half width at the mouth'),
    headDepth: size('Head groove, depth from the axis to the mouth'),
    headRadius: size('Head groove, radius at the bottom', 100),
    mouthRadius: size('Head groove, radius at the mouth', 50),
    collarSlope: oneIn('Collar face, 1 in'),
  },
  'Universal roughing pass.',
);
export type UniversalGroove = z.output<typeof UniversalGroove>;

/** The universal pass whose cavity is the rail itself, larger by the hot factor. */
export const FinisherGroove = group(
  {
    family: z.literal('finisher'),
    ...name,
    profile: z.string().min(1),
    hotFactor: quantity('one', 'Hot over cold dimensions', 1, 1.03),
    headAllowance: quantity('mm', 'Head groove wider by, each side', -2, 5),
    crownAllowance: quantity('mm', 'Head roll farther out by', -3, 5),
    collarGap: size('Between collar and head flank, along the rolls', 30),
    rollEdge: size('Half height where the roll ends'),
  },
  'Universal finishing pass.',
);
export type FinisherGroove = z.output<typeof FinisherGroove>;

const corner = group({
  x: place('Along the rolls'),
  y: quantity('mm', 'Half height', 0, 600),
  radius: size('Radius', 500),
});

/** Any other groove: corner points of the top roll with their radii, or its vertices with bulges. */
export const FreeGroove = group(
  {
    family: z.literal('free'),
    ...name,
    gap: size('Gap at which it is drawn'),
    corners: z.array(corner).min(2).optional(),
    vertices: OutlineFile.optional(),
    footRoll: optionalQuantity('mm', 'Face of the foot roll', -600, 600),
    headRoll: optionalQuantity('mm', 'Face of the head roll', -600, 600),
  },
  'Groove given by its points.',
);
export type FreeGroove = z.output<typeof FreeGroove>;

export const Groove = choice('family', [
  FlatGroove,
  BoxGroove,
  FormerGroove,
  UniversalGroove,
  FinisherGroove,
  FreeGroove,
]);
export type Groove = z.output<typeof Groove>;
