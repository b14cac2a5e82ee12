/** Run-time checks of what crosses between the host and the studies page, one a direction; see the preview's. */
import type { Settings } from "../../geometry/figures/settings.ts";
import type { TextEdit } from "../../geometry/language/text.ts";
import {
  arrayOf,
  type Check,
  checkedByType,
  isCount,
  isNumber,
  isObject,
  isString,
  oneOf,
  orNull,
  shape,
} from "../webview/checks.ts";
import type { HostMessage, PageMessage, SavedState, StudyDocument, StudyFile, TextFile } from "./protocol.ts";

type Of<Message extends { type: string }, Type extends string> = Extract<Message, { type: Type }>;

const isEditShape = shape<TextEdit>({ start: isCount, end: isCount, newText: isString });
const isEdit: Check<TextEdit> = (value): value is TextEdit => isEditShape(value) && value.start <= value.end;

/** A name with an ending and no way out of its folder. */
const isFileName: Check<string> = (value): value is string =>
  isString(value) && /^[^\\/:*?"<>|]*[^\\/:*?"<>|.]\.[a-z0-9]+$/.test(value);

const PAGE_MESSAGES: { readonly [Type in PageMessage["type"]]: Check<Of<PageMessage, Type>> } = {
  ready: shape<Of<PageMessage, "ready">>({ type: oneOf("ready"), others: arrayOf(isString) }),
  pickOthers: shape<Of<PageMessage, "pickOthers">>({ type: oneOf("pickOthers") }),
  dropOther: shape<Of<PageMessage, "dropOther">>({ type: oneOf("dropOther"), uri: isString }),
  applyEdits: shape<Of<PageMessage, "applyEdits">>({
    type: oneOf("applyEdits"),
    request: isCount,
    version: isCount,
    edits: arrayOf(isEdit),
  }),
  saveFile: shape<Of<PageMessage, "saveFile">>({
    type: oneOf("saveFile"),
    request: isCount,
    file: shape<TextFile>({ name: isFileName, kind: isString, summary: isString, content: isString }),
  }),
  showCautions: shape<Of<PageMessage, "showCautions">>({ type: oneOf("showCautions") }),
  fault: shape<Of<PageMessage, "fault">>({ type: oneOf("fault"), reason: isString }),
};

/** Whether a value is a whole message of the page. */
export function isPageMessage(value: unknown): value is PageMessage {
  return checkedByType(PAGE_MESSAGES, value);
}

const FILE = { uri: isString, fileName: isString, text: isString };

/** Settings that are numbers; those of the analysis that a builder can set are. */
export const isSettings: Check<Partial<Settings>> = (value): value is Partial<Settings> =>
  isObject(value) && Object.values(value).every(isNumber);

const HOST_MESSAGES: { readonly [Type in HostMessage["type"]]: Check<Of<HostMessage, Type>> } = {
  document: shape<Of<HostMessage, "document">>({
    type: oneOf("document"),
    document: shape<StudyDocument>({
      ...FILE,
      version: isCount,
      variant: orNull(isString),
      units: oneOf("mm", "in"),
      settings: isSettings,
    }),
  }),
  others: shape<Of<HostMessage, "others">>({
    type: oneOf("others"),
    files: arrayOf(shape<StudyFile>(FILE)),
  }),
  show: shape<Of<HostMessage, "show">>({ type: oneOf("show"), part: isString }),
  done: shape<Of<HostMessage, "done">>({
    type: oneOf("done"),
    request: isCount,
    refused: orNull(isString),
  }),
};

/** Whether a value is a whole message of the host. */
export function isHostMessage(value: unknown): value is HostMessage {
  return checkedByType(HOST_MESSAGES, value);
}

/** Whether a value is a page's saved state; one of another release is refused, and the page starts afresh. */
export const isSavedState: Check<SavedState> = shape<SavedState>({
  documentUri: orNull(isString),
  others: arrayOf(isString),
  part: isString,
  parts: isObject,
});
