import { describe, expect, it } from "vitest";
import { findMaterial, MATERIALS } from "../../geometry/materials/table.ts";

const SOURCES = ["makers' data sheets", "Callister, Appendix B", "from memory", "common practice, no source"];

describe("the material table", () => {
  it("has each name once, in words that the language reads as one name", () => {
    const names = MATERIALS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
  });
  it("has the materials that bars are made of", () => {
    const usual =
      "wear_steel_400 wear_steel_450 wear_steel_500 s7_tool_steel steel_4140_hardened ti_6al_4v al_6061_t6 al_7075_t6 hdpe uhmwpe pla";
    for (const name of usual.split(" ")) expect(findMaterial(name)?.name).toBe(name);
    expect(findMaterial("granite")).toBe(null);
    expect(findMaterial("constructor")).toBe(null);
  });
  it("states the source of every value", () => {
    for (const { densityKgPerM3, yieldMPa, modulusGPa } of MATERIALS) {
      for (const { source } of [densityKgPerM3, yieldMPa, modulusGPa]) expect(SOURCES).toContain(source);
    }
  });
  it("has values of the size that plastics and metals have", () => {
    for (const { name, densityKgPerM3, yieldMPa, modulusGPa } of MATERIALS) {
      expect(densityKgPerM3.value, name).toBeGreaterThan(900);
      expect(densityKgPerM3.value, name).toBeLessThan(8100);
      // Steel, titanium and aluminium all have a specific stiffness near 25 GPa per g/cm³; plastics far less.
      const specific = (modulusGPa.value / densityKgPerM3.value) * 1000;
      expect(densityKgPerM3.value > 2000 ? specific > 23 && specific < 28 : specific < 4, name).toBe(true);
      // Plain metals yield below 1 % of strain, plastics below 4 %.
      const strain = yieldMPa.value / (modulusGPa.value * 1000);
      expect(strain > 0.0005 && strain < (densityKgPerM3.value > 2000 ? 0.01 : 0.04), name).toBe(true);
    }
  });
  // Makers' data sheets (typical, not guaranteed): 4140 and S7 by temper, wear plate by hardness; Callister,
  // "Materials Science and Engineering", Appendix B, for UHMWPE.
  it.each([
    ["s7_tool_steel", 7760, 1585],
    ["steel_4140_hardened", 7850, 1138],
    ["ti_6al_4v", 4420, 828],
    ["al_6061_t6", 2700, 276],
    ["al_7075_t6", 2810, 503],
    ["uhmwpe", 940, 21],
    ["wear_steel_450", 7850, 1200],
  ])("%s has %d kg/m³ and yields at %d MPa", (name, density, yieldMPa) => {
    const material = findMaterial(name);
    expect(material?.densityKgPerM3.value).toBe(density);
    expect(material?.yieldMPa.value).toBe(yieldMPa);
  });
});
