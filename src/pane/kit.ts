/** The pane's controls, small enough to load at once: see the folder kit. */
export {
  Button,
  Checkbox,
  Field,
  Input,
  Radio,
  RadioGroup,
  SearchBox,
  Select,
  SpinButton,
  Switch,
} from './kit/controls';
export { ChoiceField, TextField, Ticks } from './kit/fields';
export {
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  MessageBarTitle,
  ProgressBar,
  Spinner,
  Tab,
  TabList,
  Themed,
} from './kit/parts';
export { makeStyles, mergeClasses, tokens } from './kit/styles';
export { Badge, Body1Strong, Caption1, Subtitle2, Text } from './kit/text';
