/** A file of the report: its path below the report's folder, with forward slashes. */
export interface ReportFile {
  path: string;
  content: string | Uint8Array;
}
