/** Brought in by scripts/bench/lighthouse.py at its first run, and nowhere else. */
declare module "lighthouse" {
  type Audit = { score: number | null; displayValue?: string };
  type Category = { score: number; auditRefs: { id: string; weight: number }[] };
  const lighthouse: (
    address: string,
    settings: object,
  ) => Promise<{ lhr: { categories: Record<string, Category>; audits: Record<string, Audit> } }>;
  export default lighthouse;
}
