import { z } from 'zod';
import { group, optionalQuantity, quantities, quantity } from '../../units/group.ts';

/** One arc of the crown; the last one runs into the side and has no end of its own. */
export const CrownArc = group({
  radius: quantity('mm', 'Radius of the crown arc', 3, 2000),
  endsAt: optionalQuantity('mm', 'Half width at which the arc ends', 1, 60),
});

/**
 * The dimensions of a flat-bottom rail, upright, from the foot's underside: what the construction chain in this
 * folder's README needs, and nothing that follows from the others. Slopes are 1 : value.
 */
export const RailDimensions = group(
  {
    height: quantity('mm', 'Height', 50, 260),
    footWidth: quantity('mm', 'Foot width', 40, 260),
    webThickness: quantity('mm', 'Web thickness where it is thinnest', 4, 60),
    crown: z.array(CrownArc).min(1).max(6).meta({ title: 'Crown arcs, from the middle outwards' }),
    sideSlope: quantity('one', 'Side of the head, 1 : value', 4, 1000),
    headDepth: quantity('mm', 'Top to the head fishing lines, measured on the axis', 10, 120),
    headFishingSlope: quantity('one', 'Fishing surface of the head, 1 : value', 1, 20),
    headCornerRadius: quantity('mm', 'Lower corner of the head', 0.1, 20),
    headFilletRadii: quantities('mm', 'Fillets from the head to the web, one or two', 1, 80),
    headFilletMeetsWebAt: optionalQuantity(
      'mm',
      'Height at which the second head fillet meets the web',
      10,
      240,
    ),
    upperWebRadius: quantity('mm', 'Upper web arc', 10, 5000),
    upperWebTouchesAt: quantity('mm', 'Height at which the upper web arc is upright', 10, 240),
    lowerWebRadius: quantity('mm', 'Lower web arc', 10, 5000),
    lowerWebTouchesAt: quantity('mm', 'Height at which the lower web arc is upright', 10, 240),
    footFilletRadii: quantities('mm', 'Fillets from the foot to the web, one or two', 1, 80),
    footFilletMeetsWebAt: optionalQuantity(
      'mm',
      'Height at which the second foot fillet meets the web',
      5,
      200,
    ),
    footDepth: quantity('mm', 'Underside to the foot fishing lines, measured on the axis', 5, 100),
    footFishingSlope: quantity('one', 'Fishing surface of the foot, 1 : value', 1, 20),
    toeSlope: optionalQuantity('one', 'Outer slope of the foot, 1 : value', 2, 100),
    toeSlopeRadius: optionalQuantity('mm', 'Arc between the two slopes of the foot', 1, 300),
    toeThickness: optionalQuantity('mm', 'Toe thickness at the foot edge before rounding', 2, 60),
    toeUpperRadius: quantity('mm', 'Upper corner of the toe', 0.1, 20),
    toeLowerRadius: quantity('mm', 'Lower corner of the toe', 0.1, 20),
  },
  'Flat-bottom rail',
);
export type RailDimensions = z.output<typeof RailDimensions>;

/** The dimensions of a crane rail, form A of DIN 536-1, upright, from the foot's underside. */
export const CraneDimensions = group(
  {
    headWidth: quantity('mm', 'Head width, k', 20, 250),
    footWidth: quantity('mm', 'Foot width, b1', 60, 400),
    stepWidth: quantity('mm', 'Width at which the foot changes its slope, b2', 20, 300),
    webThickness: quantity('mm', 'Web thickness, b3', 10, 150),
    footThicknessAtWeb: quantity('mm', 'Foot thickness at the web, f1', 4, 80),
    footThicknessAtStep: quantity('mm', 'Foot thickness at b2, f2', 4, 60),
    toeThickness: quantity('mm', 'Foot thickness at the edge, f3', 3, 40),
    height: quantity('mm', 'Height, h1', 30, 250),
    headDepthAtWeb: quantity('mm', 'Top to the head underside at the web, h2', 10, 150),
    headSideHeight: quantity('mm', 'Top to the lower corner of the head, h3', 8, 120),
    headCornerRadius: quantity('mm', 'Upper corner of the head, r1', 1, 40),
    crownRadius: quantity('mm', 'Crown, r2', 50, 5000),
    headLowerCornerRadius: quantity('mm', 'Lower corner of the head, r3', 0.1, 40),
    headFilletRadius: quantity('mm', 'Head to web, r4', 0.1, 60),
    footFilletRadius: quantity('mm', 'Foot to web, r5', 0.1, 60),
    toeRadius: quantity('mm', 'Upper corner of the toe, r6', 0.1, 40),
  },
  'Crane rail',
);
export type CraneDimensions = z.output<typeof CraneDimensions>;
