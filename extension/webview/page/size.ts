/** In px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}
