/** What is always said beside a drilling plan. All but the first are common practice, without a published source. */
export const DRILL_CAUTIONS: readonly string[] = [
  "A hole is a notch: in tension the stress at its edge is about three times that around it. Keep clear of the " +
    "roots of the teeth and of the middle of the bar; say between which radii and angles holes may lie.",
  "Hardened plate takes carbide drills made for it, or is drilled before hardening; a drill that rubs hardens the " +
    "bottom of the hole. Take the burrs off and round the edges.",
  "Masses hold for a point of 118 degrees; holes from one face leave a small couple, drill half from each face " +
    "where that matters.",
  "Weigh and balance the real bar before and after: plate and cut differ from the drawing. Drill less than told " +
    "first, measure, then the rest.",
  "Have the drilled bar inspected by a qualified person; the event's rules and its safety inspector decide.",
];
