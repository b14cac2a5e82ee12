/** The units that fit behind a number. */
import type { Analysis } from "../../analysis/analyse.ts";
import { LENGTH, sameDimension } from "../../language/dimension.ts";
import { usualUnits } from "../../language/evaluate/usual-unit.ts";
import type { Dimension } from "../../language/quantity.ts";
import { dimensionName } from "../../language/quantity-kinds.ts";
import { quantityFromUnit, unitFromText } from "../../language/units.ts";
import { UNIT_NAMES } from "../../language/vocabulary.ts";
import type { Candidate } from "../completion.ts";
import { valueText } from "../value-text.ts";

/** Units in the order in which a builder is likely to want them; those with a sign in them are built from others. */
const COMMON_UNITS = [
  ..."mm in cm m thou ft deg rad rpm rad/s m/s km/h mph ft/s kg g lb oz kg/m^3 g/cm^3 lb/in^3 MPa ksi psi".split(
    " ",
  ),
  ..."mm^2 in^2 mm^3 in^3 kg*m^2 kg*mm^2 lb*in^2 g*mm oz*in J kJ N*m lbf*ft lbf*in kg*m^2/s m/s^2".split(" "),
];

const UNITS: readonly string[] = [...new Set([...COMMON_UNITS, ...UNIT_NAMES])];

/** Where no kind is expected, lengths come first: most numbers of a bar are lengths. */
const LIKELY = LENGTH;

/**
 * The units of a kind, the one that the file writes most first; of any kind where none is expected. A plain number
 * takes none.
 * @param before what stands of the unit already, such as `kg/`; only its continuations are offered then
 */
export function unitCandidates(
  { source }: Analysis,
  expected: Dimension | null,
  before: string,
): readonly Candidate[] {
  const usual = usualUnits(source.tree);
  return UNITS.filter((unit) => unit.startsWith(before) && unit.length > before.length).flatMap((unit) => {
    const scale = unitFromText(unit);
    if (scale === null || (expected !== null && !sameDimension(scale.dimension, expected))) return [];
    const isLikely = expected !== null || sameDimension(scale.dimension, LIKELY);
    const rank = (isLikely ? 0 : 2) + (usual(scale.dimension) === unit ? 0 : 1);
    const written = unit.slice(before.length);
    return {
      label: written,
      kind: "unit",
      detail: dimensionName(scale.dimension),
      documentation: `1 ${unit} = ${valueText(quantityFromUnit(1, scale))}`,
      insertText: written,
      isSnippet: false,
      rank,
    } satisfies Candidate;
  });
}
