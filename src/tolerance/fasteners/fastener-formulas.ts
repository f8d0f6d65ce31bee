// ASME Y14.5-2018 appendix B, formulas for positional tolerancing. All lengths in one unit, whichever.
// H: smallest clearance hole, F: largest fastener, T: diameter of the positional tolerance zone.

/** Floating fastener: every part has clearance holes. T = H − F for each part; parts may differ in H. */
export function floatingTolerance(hole: number, fastener: number): number {
  return hole - fastener
}

/** Smallest clearance hole of a floating fastener: H = F + T. */
export function floatingHole(fastener: number, tolerance: number): number {
  return fastener + tolerance
}

/** Fixed fastener: one part holds it (thread, press fit). T1 + T2 = H − F, to be shared between the two parts. */
export function fixedTolerance(hole: number, fastener: number): number {
  return hole - fastener
}

/** Smallest clearance hole of a fixed fastener where the held part carries a projected tolerance zone: H = F + T1 + T2. */
export function fixedHole(fastener: number, clearancePart: number, heldPart: number): number {
  return fastener + clearancePart + heldPart
}

/**
 * Smallest clearance hole of a fixed fastener where the zone of the held part is not projected and the fastener may lean:
 * H = F + T1 + T2 (1 + 2P/D).
 * @param heldDepth D, least depth of thread or press fit that holds the fastener
 * @param passed P, greatest thickness of the part with the clearance hole (the greatest projection of a stud)
 */
export function fixedHoleUnprojected(
  fastener: number,
  clearancePart: number,
  heldPart: number,
  heldDepth: number,
  passed: number,
): number {
  return fastener + clearancePart + heldPart * (1 + (2 * passed) / heldDepth)
}

/** Share of T1 + T2 that goes to the clearance part; the rest is the held part's. 60 % for the thread is common practice, no source. */
export function shareFixed(
  total: number,
  clearanceShare: number,
): { readonly clearancePart: number; readonly heldPart: number } {
  return { clearancePart: total * clearanceShare, heldPart: total * (1 - clearanceShare) }
}

/** Whether a pattern assembles at the virtual conditions: the spare room, negative when it binds. */
export function fixedClearance(hole: number, fastener: number, clearancePart: number, heldPart: number): number {
  return hole - fastener - clearancePart - heldPart
}

/** Diameter of the zone that holds a ± rectangle: twice the half diagonal. */
export function zoneOfPlusMinus(x: number, y: number): number {
  return 2 * Math.hypot(x, y)
}

/** Diameter of the position deviation of an axis found off by dx and dy. */
export function positionDeviation(dx: number, dy: number): number {
  return 2 * Math.hypot(dx, dy)
}
