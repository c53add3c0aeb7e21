import { factorsToUse, inUse, learntOf } from "../../src/pane/course/learnt";
import { useFactors } from "../../src/pane/course/actions";
import { PaneDesk } from "../../src/pane/controller";
import { firstState, Store } from "../../src/pane/state";
import { bookIn, starterPort } from "./starterBook";

test("factors that were taken into use stay what was learnt, though the card moved with them", async () => {
  const port = starterPort();
  const before = await bookIn(port);
  const learnt = learntOf(before);
  if (!learnt.ok) throw new Error(learnt.why);
  expect(inUse(learnt.value, before)).toBe(false);
  const desk = new PaneDesk(new Store(firstState("course")), port, {});
  await useFactors(desk, factorsToUse(learnt.value, before));
  const after = await bookIn(port);
  const again = learntOf(after);
  if (!again.ok) throw new Error(again.why);
  expect(after.settings.headwindFactor).not.toBe(1);
  expect(after.settings.headwindSd).toBeLessThan(0.5);
  expect(inUse(again.value, after)).toBe(true);
});
