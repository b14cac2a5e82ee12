/**
 * The text of a bar with so many segments: a toothed wheel of radial lines and arcs about the spin axis, one tooth a
 * little longer than the rest, so that nothing in it is a special case of symmetry.
 * @param segments a multiple of four
 */
export function syntheticBar(segments: number): string {
  const teeth = segments / 4;
  const share = 360 / teeth / 2;
  const steps = Array.from({ length: teeth }, (_, index) => {
    const start = index * 2 * share;
    const [tip, root] = [index === 0 ? "tip + 2 mm" : "tip", `root - ${(index % 5) * 0.25} mm`];
    return [
      `  line (${tip} @ ${start} deg)`,
      `  arc (${tip} @ ${start + share} deg) about (0 mm, 0 mm) turning left`,
      `  line (${root} @ ${start + share} deg)`,
      `  arc (${root} @ ${start + 2 * share} deg) about (0 mm, 0 mm) turning left`,
    ].join("\n");
  });
  return [
    'bar "Synthetic wheel"',
    "thickness 10 mm",
    "material wear_steel_450",
    "let tip = 120 mm",
    "let root = 100 mm",
    "outline {",
    `  from (root - ${((teeth - 1) % 5) * 0.25} mm @ 0 deg)`,
    ...steps,
    "}",
    "bore 25 mm",
    "hole ring 4 at radius 50 mm diameter 12 mm",
    "spin 4200 rpm ccw",
    "approach 0.5 m/s to 6 m/s",
    "require mass <= 3 kg",
    "require clean_bite >= 0 m/s",
    "",
  ].join("\n");
}
