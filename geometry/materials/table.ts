import type { Material, Sourced } from "./material.ts";

/**
 * Values for planning. Makers' sheets give typical strengths, not guaranteed ones, and heat treatment changes hardened
 * steel by hundreds of MPa: where a temper matters the title states it. Of a published range the low end is taken.
 */
const MAKERS = "makers' data sheets";
const CALLISTER = "Callister, Appendix B";
const MEMORY = "from memory";

export const MATERIALS: readonly Material[] = [
  row("wear_steel_400", "Wear-resistant steel, 400 HBW", [7850, MEMORY], [1100, MAKERS], [205, MEMORY]),
  row("wear_steel_450", "Wear-resistant steel, 450 HBW", [7850, MEMORY], [1200, MAKERS], [205, MEMORY]),
  row("wear_steel_500", "Wear-resistant steel, 500 HBW", [7850, MEMORY], [1400, MAKERS], [205, MEMORY]),
  row(
    "s7_tool_steel",
    "S7 tool steel, hardened, tempered at 315 °C",
    [7760, MAKERS],
    [1585, MAKERS],
    [207, MEMORY],
  ),
  row(
    "steel_4140_hardened",
    "4140 steel, oil-quenched, tempered at 425 °C",
    [7850, MAKERS],
    [1138, MAKERS],
    [205, MAKERS],
  ),
  row("steel_s355", "S355 structural steel, plate up to 16 mm", [7850, MEMORY], [355, MEMORY], [210, MEMORY]),
  row("mild_steel", "Mild steel, A36", [7850, MEMORY], [250, MEMORY], [200, MEMORY]),
  row("stainless_304", "304 stainless steel, annealed", [8000, MEMORY], [205, MEMORY], [193, MEMORY]),
  row("ti_6al_4v", "Ti-6Al-4V titanium, annealed, minimum", [4420, MAKERS], [828, MAKERS], [114, MAKERS]),
  row("al_6061_t6", "6061-T6 aluminium", [2700, MAKERS], [276, MAKERS], [68.9, MAKERS]),
  row("al_6082_t6", "6082-T6 aluminium", [2700, MEMORY], [255, MEMORY], [70, MEMORY]),
  row("al_7075_t6", "7075-T6 aluminium", [2810, MAKERS], [503, MAKERS], [72, MAKERS]),
  row("hdpe", "HDPE, high-density polyethylene", [959, MEMORY], [26, CALLISTER], [1.08, CALLISTER]),
  row(
    "uhmwpe",
    "UHMWPE, ultra-high-weight polyethylene",
    [940, CALLISTER],
    [21, CALLISTER],
    [0.69, CALLISTER],
  ),
  row("polycarbonate", "Polycarbonate", [1200, MEMORY], [62, MEMORY], [2.4, MEMORY]),
  row("nylon_66", "Nylon 6,6, dry", [1140, MEMORY], [55, MEMORY], [2.7, MEMORY]),
  row("pla", "PLA, printed solid", [1240, MEMORY], [50, MEMORY], [3.5, MEMORY]),
  row("petg", "PETG, printed solid", [1270, MEMORY], [45, MEMORY], [2.1, MEMORY]),
  row("abs", "ABS, printed solid", [1050, MEMORY], [35, MEMORY], [2.1, MEMORY]),
];

const BY_NAME: ReadonlyMap<string, Material> = new Map(
  MATERIALS.map((material) => [material.name, material]),
);

/** The material of this name, or null. */
export function findMaterial(name: string): Material | null {
  return BY_NAME.get(name) ?? null;
}

type SourcedPair = readonly [value: number, source: string];

function row(
  name: string,
  title: string,
  densityKgPerM3: SourcedPair,
  yieldMPa: SourcedPair,
  modulusGPa: SourcedPair,
): Material {
  return {
    name,
    title,
    densityKgPerM3: sourced(densityKgPerM3),
    yieldMPa: sourced(yieldMPa),
    modulusGPa: sourced(modulusGPa),
  };
}

function sourced([value, source]: SourcedPair): Sourced {
  return { value, source };
}
