/**
 * Run-time checks of what crosses between the host and the page, one a direction. Unknown kinds, missing fields,
 * numbers that are not finite and ranges that run backwards are refused as a whole; fields beyond those of the
 * protocol are let pass and never read.
 */
import { FIGURE_GROUPS } from "../../geometry/figures/figure.ts";
import type { UnitSystem } from "../../geometry/figures/present.ts";
import type { ReportRow, ReportSummary, RequirementRow } from "../../geometry/files/report.ts";
import type { Target } from "../../geometry/language/design.ts";
import type { TextRange } from "../../geometry/language/text.ts";
import {
  arrayOf,
  type Check,
  checkedByType,
  either,
  isBoolean,
  isCount,
  isNumber,
  isString,
  oneOf,
  orNull,
  shape,
} from "../webview/checks.ts";
import type {
  AheadDrawing,
  BitePoint,
  Drawing,
  DrawnLoop,
  DrawnSegment,
  Ghost,
  Handle,
  HostMessage,
  PageMessage,
  PlanePoint,
  SavedState,
  ShownBite,
  ShownProblem,
  View,
} from "./protocol.ts";

const isUnits = oneOf("mm", "in");
const isPoint = shape<PlanePoint>({ x: isNumber, y: isNumber });
const isRangeShape = shape<TextRange>({ start: isCount, end: isCount });
const isRange: Check<TextRange> = (value): value is TextRange =>
  isRangeShape(value) && value.start <= value.end;

// From the page ----------------------------------------------------------------------------------------------------

type Of<Message extends { type: string }, Type extends string> = Extract<Message, { type: Type }>;

const PAGE_MESSAGES: { readonly [Type in PageMessage["type"]]: Check<Of<PageMessage, Type>> } = {
  ready: shape<Of<PageMessage, "ready">>({ type: oneOf("ready") }),
  reveal: shape<Of<PageMessage, "reveal">>({ type: oneOf("reveal"), source: isRange }),
  chooseVariant: shape<Of<PageMessage, "chooseVariant">>({
    type: oneOf("chooseVariant"),
    variant: orNull(isString),
  }),
  chooseUnits: shape<Of<PageMessage, "chooseUnits">>({ type: oneOf("chooseUnits"), units: isUnits }),
  movePoint: shape<Of<PageMessage, "movePoint">>({
    type: oneOf("movePoint"),
    request: isCount,
    version: isCount,
    handle: isCount,
    to: isPoint,
  }),
  exportCutFile: shape<Of<PageMessage, "exportCutFile">>({ type: oneOf("exportCutFile") }),
  showCautions: shape<Of<PageMessage, "showCautions">>({ type: oneOf("showCautions") }),
};

/** Whether a value is a whole message of the page. */
export function isPageMessage(value: unknown): value is PageMessage {
  return checkedByType(PAGE_MESSAGES, value);
}

// From the host ----------------------------------------------------------------------------------------------------

const isSegment: Check<DrawnSegment> = either(
  shape<Extract<DrawnSegment, { kind: "line" }>>({
    kind: oneOf("line"),
    from: isPoint,
    to: isPoint,
    source: isRange,
  }),
  shape<Extract<DrawnSegment, { kind: "arc" }>>({
    kind: oneOf("arc"),
    from: isPoint,
    to: isPoint,
    centre: isPoint,
    radiusMm: isNumber,
    startRad: isNumber,
    sweepRad: isNumber,
    source: isRange,
  }),
);

const isLoop = shape<DrawnLoop>({
  kind: oneOf("outer", "bore", "hole", "slot", "cutout"),
  segments: arrayOf(isSegment),
});

const isHandle = shape<Handle>({
  id: isCount,
  at: isPoint,
  source: isRange,
  movesX: isBoolean,
  movesY: isBoolean,
});

const isBounds: Check<Drawing["boundsMm"]> = (value): value is Drawing["boundsMm"] =>
  arrayOf(isNumber)(value) && value.length === 4;

const AHEAD_FIELDS = {
  loops: arrayOf(isLoop),
  boundsMm: isBounds,
  maxRadiusMm: isNumber,
  centroid: orNull(isPoint),
  imbalanceDeg: orNull(isNumber),
  balanced: orNull(isBoolean),
  finelyBalanced: isBoolean,
  imbalanceShare: orNull(isNumber),
  tips: arrayOf(isPoint),
  direction: orNull(oneOf("ccw", "cw")),
} as const;
const isDrawing = shape<Drawing>({ ...AHEAD_FIELDS, handles: arrayOf(isHandle) });

const isReport = shape<ReportSummary>({
  title: isString,
  variant: orNull(isString),
  subtitle: isString,
  sections: arrayOf(
    shape<ReportSummary["sections"][number]>({
      group: oneOf(...FIGURE_GROUPS),
      title: isString,
      rows: arrayOf(
        shape<ReportRow>({
          key: isString,
          label: isString,
          value: shape<ReportRow["value"]>({ text: isString, unit: isString }),
          meaning: isString,
        }),
      ),
    }),
  ),
  requirements: arrayOf(
    shape<RequirementRow>({ label: isString, value: isString, limit: isString, holds: orNull(isBoolean) }),
  ),
});

const isBite = shape<ShownBite>({
  target: shape<Target>({
    kind: oneOf("edge", "face", "round"),
    radiusMm: isNumber,
    offsetMm: isNumber,
  }),
  direction: oneOf("ccw", "cw"),
  radPerS: isNumber,
  squareStrikeRad: isNumber,
  curve: arrayOf(
    shape<BitePoint>({
      closingMPerS: isNumber,
      maxMm: isNumber,
      meanMm: isNumber,
      tenthMm: isNumber,
      ninetiethMm: isNumber,
      squareShare: isNumber,
      toothShare: isNumber,
      passedShare: isNumber,
      idealMm: orNull(isNumber),
    }),
  ),
  cleanMPerS: orNull(isNumber),
  teethOnlyMPerS: orNull(isNumber),
});

const isView = shape<View>({
  version: isCount,
  documentUri: isString,
  fileName: isString,
  variant: orNull(isString),
  variants: arrayOf(isString),
  stale: isBoolean,
  drawing: orNull(isDrawing),
  description: orNull(shape<Record<UnitSystem, string>>({ mm: isString, in: isString })),
  ghosts: arrayOf(shape<Ghost>({ variant: orNull(isString), loops: arrayOf(isLoop) })),
  reports: shape<Record<UnitSystem, ReportSummary>>({ mm: isReport, in: isReport }),
  bite: orNull(isBite),
  problems: arrayOf(
    shape<ShownProblem>({
      severity: oneOf("error", "warning", "information"),
      code: isString,
      message: isString,
      line: isCount,
      source: isRange,
      at: orNull(isPoint),
    }),
  ),
  cautions: arrayOf(isString),
});

const HOST_MESSAGES: { readonly [Type in HostMessage["type"]]: Check<Of<HostMessage, Type>> } = {
  view: shape<Of<HostMessage, "view">>({ type: oneOf("view"), view: isView, units: isUnits }),
  drawing: shape<Of<HostMessage, "drawing">>({
    type: oneOf("drawing"),
    version: isCount,
    documentUri: isString,
    variant: orNull(isString),
    drawing: shape<AheadDrawing>(AHEAD_FIELDS),
  }),
  highlight: shape<Of<HostMessage, "highlight">>({ type: oneOf("highlight"), source: orNull(isRange) }),
  failed: shape<Of<HostMessage, "failed">>({ type: oneOf("failed"), request: isCount, message: isString }),
};

/** Whether a value is a whole message of the host. */
export function isHostMessage(value: unknown): value is HostMessage {
  return checkedByType(HOST_MESSAGES, value);
}

// What the page keeps ----------------------------------------------------------------------------------------------

/** Whether a value is a page's saved state; one of another release is refused, and the page starts afresh. */
export const isSavedState: Check<SavedState> = shape<SavedState>({
  documentUri: orNull(isString),
  variant: orNull(isString),
  units: orNull(isUnits),
  hostUnits: orNull(isUnits),
  viewport: orNull(
    shape<NonNullable<SavedState["viewport"]>>({
      centre: isPoint,
      pxPerMm: isNumber,
      fitted: isBoolean,
    }),
  ),
  toggles: shape<SavedState["toggles"]>({
    dimensions: isBoolean,
    variants: isBoolean,
    points: isBoolean,
    strikes: isBoolean,
    explanations: isBoolean,
  }),
  openSections: arrayOf(isString),
});
