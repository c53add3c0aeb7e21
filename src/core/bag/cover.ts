/** How well a bag covers one distance. */
import { PRIOR_FREEDOM } from "../constants";
import { conditionsOf } from "../flight/conditions";
import { chanceOf, type ThrowForm } from "../choice/chance";
import { downhill } from "../choice/downhill";
import { levelTargets } from "../choice/levelTarget";
import { powersOf, powerThatReaches } from "../choice/powers";
import type { Target } from "../choice/target";
import type { Card, CardRow, Settings } from "../types";

export interface Cover {
  readonly distanceM: number;
  /** Best chance of the circle over the bag, each disc at its best power. */
  readonly chance: number;
  /** Chance of an imaginary disc that carries just that far at smooth power, with the spread of the bag. */
  readonly ideal: number;
  /** The disc with the best chance. */
  readonly disc: string;
}

/**
 * Coverage as a function of distance, m above 0, level and calm in the air of the settings. `rows` are
 * the discs to choose from, at least one; equals go to the earlier.
 */
export function coverOf(
  rows: readonly CardRow[],
  { population }: Pick<Card, "population">,
  settings: Settings,
): (distanceM: number) => Cover {
  const level = levelTargets(conditionsOf(settings));
  const powersByDisc = new Map(rows.map((row) => [row, powersOf(row, settings)]));
  const bestChance = (row: CardRow, target: Target): number => {
    const chance = chanceOf(row, target, settings.circleM);
    const powers = powersByDisc.get(row)!;
    const start = powerThatReaches(row, powers, target);
    return -downhill(start, powers.length, (at) => -chance(powers[at]!)).cost;
  };
  return (distanceM) => {
    let best = { chance: -1, disc: "" };
    for (const row of rows) {
      const chance = bestChance(row, level(row.type, distanceM));
      if (chance > best.chance) best = { chance, disc: row.disc };
    }
    const target = level(null, distanceM);
    const ideal = chanceOf(idealRow(target, population, settings), target, settings.circleM)(1);
    return { distanceM, ...best, ideal };
  };
}

/** A disc known through and through: no doubt of its middle adds to the spread of the bag. */
const idealRow = (
  { playsLikeM }: Target,
  { scale, freedom }: Card["population"],
  { sideSpreadRad }: Settings,
): ThrowForm => ({
  mu: Math.log(playsLikeM),
  scale,
  freedom,
  evidence: Infinity,
  side: { biasRad: 0, scaleRad: sideSpreadRad, freedom: PRIOR_FREEDOM, throws: 0 },
});
