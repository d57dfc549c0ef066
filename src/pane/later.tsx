/** A section that is large and not always wanted: fetched when it is first turned to. */
import { useEffect, useState, type ComponentType } from 'react';
import { MessageBar, MessageBarBody, Spinner } from './kit';

/** What it shows until it is there, and where it cannot be fetched. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>) {
  let fetched: Promise<ComponentType<Props>> | undefined;
  return function Later(props: Props) {
    const [here, setHere] = useState<{ readonly Of?: ComponentType<Props>; readonly failed?: true }>({});
    useEffect(() => {
      let wanted = true;
      fetched ??= load();
      fetched.then(
        (Of) => {
          if (wanted) setHere({ Of });
        },
        () => {
          // Turned to again, it is asked for again.
          fetched = undefined;
          if (wanted) setHere({ failed: true });
        },
      );
      return () => {
        wanted = false;
      };
    }, []);
    const { Of, failed } = here;
    if (Of !== undefined) return <Of {...props} />;
    return failed === true ? (
      <MessageBar intent="error">
        <MessageBarBody>
          This part of the pane could not be fetched. Look at the connection, close the pane and open it
          again.
        </MessageBarBody>
      </MessageBar>
    ) : (
      <Spinner />
    );
  };
}
