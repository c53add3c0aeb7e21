/**
 * Property tests try the same cases in every run, so that a failure is the change's. Other cases:
 * CARRYBOOK_SEED=1 npm test.
 */
import fc from "fast-check";

fc.configureGlobal({ seed: Number(process.env.CARRYBOOK_SEED ?? 20261125) });
