/** The package ships named types but is CommonJS: at run time only its default import exists. */
declare module 'geomagnetism' {
  const geomagnetism: { model: typeof import('geomagnetism').model };
  export default geomagnetism;
}
