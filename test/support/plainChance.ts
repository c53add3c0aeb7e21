/** The chance of the circle as a plain sum over thin slices, with jstat's Student t. */
import jstat from "jstat";
import type { ThrowForm } from "../../src/core/choice/courseForm";

const SOFTNESS = 0.15;

/** The model's statement word for word; `slices` of equal width across the circle. */
export function plainChance(
  form: ThrowForm,
  distanceM: number,
  playsLikeM: number,
  power: number,
  circleM: number,
  slices: number,
): number {
  const scale = Math.sqrt(form.scale ** 2 + (SOFTNESS * (1 - power)) ** 2);
  const widthM = (2 * circleM) / slices;
  let chance = 0;
  for (let slice = 0; slice < slices; slice++) {
    const missM = -circleM + (slice + 0.5) * widthM;
    const carryM = playsLikeM + (missM * playsLikeM) / distanceM;
    if (carryM <= 0) continue;
    const along = (Math.log(carryM) - form.mu - Math.log(power)) / scale;
    const density =
      ((jstat.studentt.pdf(along, form.freedom) / scale / carryM) * playsLikeM) / distanceM;
    const angle = Math.atan(Math.sqrt(circleM ** 2 - missM ** 2) / distanceM);
    const across = 2 * jstat.studentt.cdf(angle / form.side.scaleRad, form.side.freedom) - 1;
    chance += density * across * widthM;
  }
  return chance;
}
