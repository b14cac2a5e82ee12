import type { BudgetDesign, BudgetPart } from "../../design.ts";
import { type BlockValues, numberOf, type SettingValues, settingsOf } from "./block-values.ts";

/** What `budget { … }` says; a part whose mass is wrong is left out. */
export function budgetOf(values: BlockValues): BudgetDesign {
  const parts = settingsOf(values, "part");
  return {
    limitKg: numberOf(values, "limit", "mass"),
    scaleKg: numberOf(values, "scale", "mass"),
    parts: parts.flatMap((setting) => partOf(setting) ?? []),
    isWhole: parts.every((setting) => partOf(setting) !== null),
    keyword: values.keyword,
    range: values.range,
  };
}

function partOf({ numbers, texts, said, range }: SettingValues): BudgetPart | null {
  const massKg = numbers.get("mass")?.value ?? null;
  const count = said.has("count") ? (numbers.get("count")?.value ?? null) : 1;
  if (massKg === null || count === null) return null;
  return { name: texts.get("name")?.value ?? "", massKg, count, isSpare: said.has("spare"), range };
}
