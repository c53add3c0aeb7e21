/** What the tests take from jstat, which comes without types. */
declare module "jstat" {
  const jstat: {
    gammaln(x: number): number;
    readonly normal: { cdf(x: number, mean: number, sd: number): number };
    readonly studentt: {
      cdf(x: number, freedom: number): number;
      inv(p: number, freedom: number): number;
      pdf(x: number, freedom: number): number;
    };
  };
  export default jstat;
}
