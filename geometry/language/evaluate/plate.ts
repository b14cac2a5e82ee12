import type { Material } from "../../materials/material.ts";
import { findMaterial, MATERIALS } from "../../materials/table.ts";
import type { Design } from "../design.ts";
import { nearestWord } from "../nearest-word.ts";
import type { MaterialStatement, SyntaxTree, VariantStatement } from "../tree.ts";
import { didYouMean, failure } from "./problems.ts";
import { evaluateDensity, evaluateThickness, evaluateYield } from "./settings.ts";
import type { Scope } from "./values.ts";
import { settingOf } from "./variants.ts";

type Plate = Pick<Design, "thicknessMm" | "material" | "densityKgPerM3" | "yieldMPa">;

/**
 * Thickness and material. A density or yield strength that is written takes the place of the material's; where a variant
 * changes the material, what the bar itself says of them was about the other material and does not count.
 */
export function evaluatePlate(scope: Scope, tree: SyntaxTree, variant: VariantStatement | null): Plate {
  const material = settingOf(tree, variant, "material", (statement) => evaluateMaterial(scope, statement));
  const density = settingOf(tree, variant, "density", (statement) => evaluateDensity(scope, statement));
  const yielding = settingOf(tree, variant, "yield", (statement) => evaluateYield(scope, statement));
  const thickness = settingOf(tree, variant, "thickness", (statement) => evaluateThickness(scope, statement));
  const counts = (setting: typeof density) =>
    setting.statement !== null && (setting.isChanged || !material.isChanged);
  return {
    thicknessMm: thickness.value,
    material: material.value,
    densityKgPerM3: counts(density) ? density.value : (material.value?.densityKgPerM3.value ?? null),
    yieldMPa: counts(yielding) ? yielding.value : (material.value?.yieldMPa.value ?? null),
  };
}

function evaluateMaterial({ report }: Scope, { name }: MaterialStatement): Material | null {
  if (name === null) return null;
  const material = findMaterial(name.name);
  if (material !== null) return material;
  const names = MATERIALS.map((known) => known.name);
  const near = nearestWord(name.name, names);
  const { hint, fixes } = didYouMean(name.range, near);
  const all =
    near === null ? ` The table has ${names.join(", ")}; for others write density 7850 kg/m^3.` : "";
  report(
    failure(
      "unknown-material",
      name.range,
      `'${name.name}' is not in the material table${hint}${all}`,
      fixes,
    ),
  );
  return null;
}
