/** `npm run package -- https://host/path`, or HEMLEDGER_ORIGIN=https://host/path npm run package. */
import { main } from './package';

await main(process.argv[2] ?? process.env['HEMLEDGER_ORIGIN']).catch((thrown: unknown) => {
  console.error(thrown instanceof Error ? thrown.message : String(thrown));
  process.exitCode = 1;
});
