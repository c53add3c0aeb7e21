import { plainCard } from "../../../src/tools/bench/plainCard";
import { cardCells, readCard } from "../../../src/core/carry/cardCells";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";

// The peer of the bench, written apart from the product on jstat and simple-statistics. It knows the
// usual prior only, hence four discs; jstat's quantile is good to 6e-8.
test("the product and the plain statement of the card agree", () => {
  const rows = Array.from({ length: 400 }, (_, index): unknown[] => {
    const swing = Math.sin(index * 12.9898) + Math.sin(index * 78.233);
    const carry = (200 + 40 * (index % 4)) * Math.exp(0.05 * swing);
    return [46_000 + index, `Disc ${index % 4}`, carry, index % 3 === 0 ? 10 * swing : ""];
  });
  const cells = [["Date", "Disc", "Carry", "Offline"], ...rows];
  const card = readCard(cells, null, DEFAULT_SETTINGS);
  const printed = cardCells(card, DEFAULT_SETTINGS).slice(1);
  const plain = plainCard(cells);
  expect(printed).toHaveLength(4);
  plain.forEach((peer, index) => {
    const [disc, , , carry, , high] = printed[index]!;
    expect(String(disc).toLowerCase()).toBe(peer.disc);
    expect(Math.abs(Number(carry) / peer.carry - 1)).toBeLessThan(1e-10);
    expect(Math.abs(Number(high) / peer.high - 1)).toBeLessThan(1e-7);
    expect(card.rows[index]!.side.biasRad).toBeCloseTo(peer.bias, 10);
    expect(card.rows[index]!.side.scaleRad).toBeCloseTo(peer.side, 10);
  });
});
