/** A small workbook for the contract of the port: invented data, no function of ours needed to fill it. */
import type { Blueprint, SheetPlan } from "../../src/workbook/blueprint/types";

export const logPlan: SheetPlan = {
  name: "Log",
  frozenRows: 3,
  blocks: [
    { kind: "cells", at: "A1", values: [["Log of throws"]], style: "title" },
    {
      kind: "table",
      name: "Throws",
      at: "A3",
      columns: [
        { header: "Date", width: 12, format: "yyyy-mm-dd" },
        { header: "Disc", width: 18, list: { column: "Bag[Disc]", strict: false } },
        { header: "Carry", width: 9, format: "0" },
        { header: "Long name", width: 12 },
        { header: "Double", width: 9, formula: "=Throws[[#This Row],[Carry]]*2" },
      ],
      rows: [
        [46000, "Copper mid", 301, "first", ""],
        [46001, "Slate putter", 248, "", ""],
        [46002, "Copper mid", 287.5, "third", ""],
      ],
      least: 5,
    },
  ],
};

export const bagPlan: SheetPlan = {
  name: "Discs",
  blocks: [
    {
      kind: "table",
      name: "Bag",
      at: "A1",
      columns: [
        { header: "Disc", width: 18 },
        { header: "In bag", width: 8, list: { values: ["yes", "no"], strict: false } },
      ],
      rows: [
        ["Copper mid", "yes"],
        ["Slate putter", "no"],
      ],
    },
    {
      kind: "cells",
      at: "D1",
      name: "Limits",
      values: [
        ["Longest", 350],
        ["Ready", true],
        ["Blank", ""],
      ],
    },
    { kind: "formula", at: "G1", formula: "=CARRY.TWICE(Discs!$E$1)", name: "Twice" },
  ],
};

export const contractBlueprint: Blueprint = { sheets: [logPlan, bagPlan] };
