import type { Material, Sourced } from "../materials/material.ts";
import { plainText } from "./markdown.ts";

/** What the table says of a material, each value with its source: lines of markdown. */
export function materialLines({ title, densityKgPerM3, yieldMPa, modulusGPa }: Material): readonly string[] {
  const row = (label: string, { value, source }: Sourced, unit: string) =>
    `- ${label}: ${value} ${unit} (${plainText(source)})`;
  const rows = [
    row("Density", densityKgPerM3, "kg/m³"),
    row("Yield strength", yieldMPa, "MPa"),
    row("Modulus of elasticity", modulusGPa, "GPa"),
  ];
  return [
    `**${plainText(title)}**`,
    rows.join("\n"),
    "Values for planning: ask for the certificate of the plate that is cut.",
  ];
}
