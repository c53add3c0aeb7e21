/** Words in notes that are not the name of a disc. */
import { discKey } from "../log/discKey";

/** Lines of flight, as the log's column Line takes them. */
const LINES: ReadonlySet<string> = new Set(["straight", "flat", "hyzer", "anhyzer"]);

/** Words about a throw. Between two carries they are a remark and not the next disc. */
const REMARKS: ReadonlySet<string> = new Set(
  (
    "a again all best better clean down downhill early easy first full good great head headwind high hit " +
    "in into last late long low nice no of on one only out over rolled roller second short skip " +
    "skipped smooth tail tailwind the third throw throws tree try up uphill very wind windy with wobbly"
  ).split(" "),
);

export const isLine = (words: string): boolean => LINES.has(discKey(words));

export const isRemark = (words: string): boolean =>
  discKey(words)
    .split(" ")
    .every((word) => REMARKS.has(word));
