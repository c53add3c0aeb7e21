import { FilePort } from "../../src/workbook/file/filePort";
import { portContract } from "./contract";

portContract(
  "file",
  async () => ({
    port: FilePort.create({ sheets: [{ name: "Mine", blocks: [] }] }),
    calculated: async () => {},
    close: () => {},
  }),
  { calculates: false },
);
