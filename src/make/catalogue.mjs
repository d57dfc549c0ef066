/** The small catalogue beside the bare bundle: what each function is called, takes and says, from Excel's metadata. */
export function catalogue(metadata) {
  const { functions } = JSON.parse(metadata.toString());
  const small = functions.map(({ name, description, parameters, result }) => ({
    name,
    says: description,
    takes: parameters.map(({ name: called, description: says, optional, repeating, dimensionality }) => ({
      name: called,
      says,
      ...(optional === true && { optional }),
      ...(repeating === true && { repeats: true }),
      ...(dimensionality === 'matrix' && { range: true }),
    })),
    ...(result?.dimensionality === 'matrix' && { gives: 'rows' }),
  }));
  return `${JSON.stringify(small, null, 1)}\n`;
}
