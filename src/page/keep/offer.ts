/** Offers what an earlier visit left, and goes on with it only when asked to. */
import type { Line } from "../line";
import { type Copy, readCopies, removeCopy } from "./copies";

const DAY_AND_TIME = new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short" });

export const whenMade = ({ at }: Copy): string => DAY_AND_TIME.format(at);

/** The newest copy first; with each one that is discarded comes the next. */
export async function offerCopies(line: Line, goOn: (copy: Copy) => void): Promise<void> {
  // Where the browser refuses even to look, nothing was ever kept; a first change will tell.
  const copies = await readCopies().catch(() => []);
  const offer = ([copy, ...older]: readonly Copy[]): void => {
    if (!copy) return line.clear("offer");
    line.say("offer", {
      text: "",
      buttons: [
        {
          label: `Go on where you stopped (${whenMade(copy)})`,
          press: () => {
            line.clear("offer");
            goOn(copy);
          },
        },
        {
          label: "Discard",
          press: () => {
            offer(older);
            void removeCopy(copy.visit).catch(() => undefined);
          },
        },
      ],
    });
  };
  offer(copies);
}
