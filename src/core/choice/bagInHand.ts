/** The discs that can be chosen from. */
import { unavailable } from "../errors";
import { discKey } from "../log/discKey";
import { messages } from "../messages";
import type { Card, CardRow } from "../types";

/** The rows of the discs that are in the bag, longest first; throws `unavailable` where there is none. */
export function bagInHand({ rows }: Card): CardRow[] {
  if (rows.length === 0) throw unavailable(messages.carry.noThrows());
  const inHand = rows.filter(({ inBag }) => inBag);
  if (inHand.length === 0) throw unavailable(messages.choice.emptyBag());
  return inHand;
}

/** Whether a disc may be thrown where a line is asked for: one without a line of its own always may. */
export function suitsLine(discLine: string, line: string): boolean {
  const [own, asked] = [discKey(discLine), discKey(line)];
  return own === "" || asked === "" || own === asked;
}
