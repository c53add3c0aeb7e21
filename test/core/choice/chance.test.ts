import golden from "../../golden/chance.json";
import log from "../../golden/card.json";
import { makeCard } from "../../../src/core/carry/makeCard";
import { rowOf } from "../../../src/core/carry/rowOf";
import { chanceOf } from "../../../src/core/choice/chance";
import { DEFAULT_SETTINGS } from "../../../src/core/log/defaultSettings";
import { readThrows } from "../../../src/core/log/readThrows";
import { toMetres } from "../../../src/core/units";

const card = makeCard(
  readThrows([log.columns, ...log.throws], DEFAULT_SETTINGS),
  null,
  DEFAULT_SETTINGS,
);

// Independent computation in NumPy and SciPy: test/golden/chance.json.
test.each(golden.chances)("$disc at $distanceFt ft, power $power", (expected) => {
  const distanceM = toMetres(expected.distanceFt, "ft");
  const chance = chanceOf(rowOf(card, expected.disc), { distanceM, playsLikeM: distanceM }, 10);
  expect(Math.abs(chance(expected.power) - expected.chance)).toBeLessThan(golden.tolerance);
});
