import "./preview.css";
import { translated } from "../strings.ts";
import { connectToHost } from "./host-link.ts";
import { startPage } from "./page.ts";

startPage(document.body, connectToHost(), translated(parsed(document.body.dataset["strings"])));

/** The texts that the host put on the body; English where there are none, or none that can be read. */
function parsed(text: string | undefined): unknown {
  try {
    return JSON.parse(text ?? "null");
  } catch {
    return null;
  }
}
