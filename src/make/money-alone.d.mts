/** The operations of decimal.js that money is asked. */
export declare function operations(): readonly string[];
/** The source of decimal.js without the rest. */
export declare function moneyAlone(text: string): string;
