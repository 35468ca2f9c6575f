/** The part of the reference library that tests use; it comes without types. */
declare module 'poisson-disk-sampling' {
  export default class PoissonDiskSampling {
    constructor(
      options: { readonly shape: readonly number[]; readonly minDistance: number; readonly tries?: number },
      random: () => number,
    )
    fill(): number[][]
  }
}
