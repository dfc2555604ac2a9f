import { Component, type VNode } from 'preact';

interface StillProps {
  /** What the drawing depends on. */
  of: readonly unknown[];
  children: () => VNode;
}

/** Draws what is in it again only when something that it depends on is another: for what stands in long lists. */
export class Still extends Component<StillProps> {
  override shouldComponentUpdate({ of }: StillProps): boolean {
    return of.length !== this.props.of.length || of.some((one, place) => one !== this.props.of[place]);
  }

  override render({ children }: StillProps) {
    return children();
  }
}
