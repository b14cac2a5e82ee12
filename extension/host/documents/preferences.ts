import * as vscode from "vscode";
import type { Settings } from "../../../geometry/figures/settings.ts";

/** What a builder can set, as the code uses it. */
export interface Preferences {
  readonly units: "mm" | "in";
  readonly otherVariants: boolean;
  readonly valueHints: boolean;
  readonly lenses: boolean;
  readonly dxfRelease: "2000" | "r12";
  /** The judgements that are handed to the analysis. */
  readonly judgement: Partial<Settings>;
}

export const SECTION = "barwright";

/**
 * The settings as they are now for a document. What is set to something outside its range counts as not set: the
 * editor warns of it in its settings, and still hands it over.
 */
export function readPreferences(scope: vscode.ConfigurationScope | null): Preferences {
  const configuration = vscode.workspace.getConfiguration(SECTION, scope);
  return {
    units: configuration.get("units") === "in" ? "in" : "mm",
    otherVariants: configuration.get("preview.otherVariants") !== false,
    valueHints: configuration.get("hints.values") !== false,
    lenses: configuration.get("lenses") !== false,
    dxfRelease: configuration.get("dxfRelease") === "r12" ? "r12" : "2000",
    judgement: {
      ...within(configuration, "squareStrikeAngle", "squareStrikeDeg", 1, 89),
      ...within(configuration, "leastHoleToThickness", "leastHoleToThickness", 0, 10),
      ...within(configuration, "leastBridgeToThickness", "leastBridgeToThickness", 0, 10),
      ...within(configuration, "balanceGrade", "balanceGrade", 0.4, 4000),
    },
  };
}

function within(
  configuration: vscode.WorkspaceConfiguration,
  name: string,
  setting: keyof Settings,
  least: number,
  most: number,
): Partial<Settings> {
  const value: unknown = configuration.get(name);
  return typeof value === "number" && value >= least && value <= most ? { [setting]: value } : {};
}
