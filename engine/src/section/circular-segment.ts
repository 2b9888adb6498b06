/**
 * Moments of the piece between a chord and its arc, for radius 1 and half angle h: closed forms for large h,
 * their power series where those would cancel. All are odd in h, so an arc that turns right counts negative.
 * u runs along the chord from its middle, w away from it. Follows from ∫ over the segment; series to round-off.
 */
export interface SegmentMoments {
  readonly area: number;
  /** ∫ w dA. */
  readonly w: number;
  /** ∫ w² dA. */
  readonly ww: number;
  /** ∫ u² dA. */
  readonly uu: number;
}

const seriesBelow = 0.6;

/** Moments of a circular segment with half chord `half` (m) and bulge; m², m³, m⁴. */
export function segmentMoments(half: number, bulge: number): SegmentMoments {
  const h = 2 * Math.atan(bulge);
  const radius = bulge === 0 ? 0 : half / Math.sin(h);
  const unit = Math.abs(h) < seriesBelow ? bySeries(h) : inClosedForm(h);
  const r2 = radius * radius;
  return { area: r2 * unit.area, w: r2 * radius * unit.w, ww: r2 * r2 * unit.ww, uu: r2 * r2 * unit.uu };
}

function inClosedForm(h: number): SegmentMoments {
  const [s1, s2, s3, s4] = [Math.sin(h), Math.sin(2 * h), Math.sin(3 * h), Math.sin(4 * h)];
  return {
    area: h - s2 / 2,
    w: (3 / 4) * s1 + s3 / 12 - h * Math.cos(h),
    ww: (3 / 4) * h + (h / 2) * Math.cos(2 * h) - (7 / 12) * s2 - s4 / 48,
    uu: h / 4 - s2 / 6 + s4 / 48,
  };
}

/** The same four, term by term: the powers that cancel in the closed forms are left out before summing. */
function bySeries(h: number): SegmentMoments {
  let [area, w, ww, uu] = [0, 0, 0, 0];
  let term = h;
  for (let k = 1; k <= 11; k++) {
    const n = 2 * k + 1;
    term *= (-h * h) / (n * (n - 1));
    const [two, three, four] = [2 ** n, 3 ** n, 4 ** n];
    area -= (term * two) / 2;
    if (k > 1) w += term * (3 / 4 + three / 12 - n);
    if (k > 1) uu += term * (four / 48 - two / 6);
    if (k > 2) ww += term * ((n * two) / 4 - (7 / 12) * two - four / 48);
  }
  return { area, w, ww, uu };
}
