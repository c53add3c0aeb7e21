import type { Card, Settings } from "../types";

/** A key by which answers from a card are remembered: the content of all that they rest on. */
export const answerKey = ({ rows, population }: Card, settings: Settings, asked: unknown): string =>
  JSON.stringify([rows, population, settings, asked]);
