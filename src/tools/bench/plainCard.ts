/**
 * The card as one would first write it, with general-purpose statistics packages: the rows of each
 * disc filtered out, reweighted Huber's way, moderated with the usual prior; sideways likewise. Level,
 * calm throws, no checks of cells, no trend: less work than the product does.
 */
import jstat from "jstat";
import { median, sum } from "simple-statistics";

export interface PlainRow {
  readonly disc: string;
  readonly carry: number;
  readonly high: number;
  readonly bias: number;
  readonly side: number;
}

/** Header Date, Disc, Carry, Offline and rows below it; figures in the unit of the rows. */
export function plainCard(cells: readonly (readonly unknown[])[]): PlainRow[] {
  const rows = cells.slice(1).map(([day, disc, carry, offline]) => ({
    age: Number(day),
    disc: String(disc).trim().toLowerCase(),
    y: Math.log(Number(carry)),
    angle: offline === "" ? null : Math.atan2(Number(offline), Number(carry)),
  }));
  const newest = rows.reduce((latest, { age }) => Math.max(latest, age), 0);
  const discs = [...new Set(rows.map(({ disc }) => disc))];
  const forms = discs.map((disc) => {
    const own = rows.filter((row) => row.disc === disc);
    const weights = own.map(({ age }) => 2 ** ((age - newest) / 180));
    let mu = median(own.map(({ y }) => y));
    let all: number[] = [];
    for (let last = Infinity; Math.abs(last - mu) > 1e-12;) {
      last = mu;
      all = own.map(({ y }, i) => weights[i]! * Math.min(1, (1.345 * 0.07) / Math.abs(y - mu)));
      mu = sum(own.map(({ y }, i) => y * all[i]!)) / sum(all);
    }
    const n = sum(all) ** 2 / sum(all.map((w) => w * w));
    const variance = sum(own.map(({ y }, i) => all[i]! * (y - mu) ** 2)) / (sum(all) * (1 - 1 / n));
    return { disc, mu, n, variance, ...sideways(own.map(({ angle }, i) => [angle, weights[i]!])) };
  });
  const freedom = sum(forms.map(({ n }) => n - 1));
  const pooled = sum(forms.map(({ n, variance }) => (n - 1) * variance));
  const prior = (4 * 0.07 ** 2 + pooled) / (4 + freedom);
  return forms
    .map(({ disc, mu, n, variance, bias, side }) => {
      const scale = Math.sqrt((4 * prior + (n - 1) * variance) / (4 + n - 1));
      const reach = jstat.studentt.inv(0.9, 4 + n - 1) * scale * Math.sqrt(1 + 1 / n);
      return { disc, carry: Math.exp(mu), high: Math.exp(mu + reach), bias, side };
    })
    .sort((one, other) => other.carry - one.carry);
}

function sideways(all: readonly (readonly [number | null, number])[]): {
  bias: number;
  side: number;
} {
  const noted = all.filter((pair): pair is readonly [number, number] => pair[0] !== null);
  const total = sum(noted.map(([, weight]) => weight));
  const n = total ** 2 / sum(noted.map(([, weight]) => weight ** 2));
  const mean = sum(noted.map(([angle, weight]) => angle * weight)) / total;
  const squares = sum(noted.map(([angle, weight]) => weight * (angle - mean) ** 2));
  const variance = squares / (total * (1 - 1 / n));
  const moderated = (4 * 0.06 ** 2 + (n - 1) * variance) / (4 + n - 1);
  return { bias: (mean * n) / (n + 1), side: Math.sqrt(moderated * (1 + 1 / n)) };
}
