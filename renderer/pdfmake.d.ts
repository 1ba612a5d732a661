declare module 'pdfmake/build/pdfmake' {
  const library: unknown
  export default library
}
