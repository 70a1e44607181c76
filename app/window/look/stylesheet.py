"""One style sheet for everything that Qt draws for us, made once for each look."""

from PySide6.QtWidgets import QApplication

from app.window.look.look import LOOK, Gap, Look, Size, families


def wear(app: QApplication, new: Look) -> None:
    """Dress every window of the program; parts that paint themselves follow their StyleChange.

    What is worn already costs nothing: Qt would style every widget anew.
    """
    if app.styleSheet() and app.property(LOOK) == new:
        return
    app.setProperty(LOOK, new)
    if app.style().objectName() != "fusion":
        app.setStyle("fusion")
    app.setFont(new.font(Size.PLAIN))
    app.setStyleSheet(stylesheet(new))


def stylesheet(look: Look) -> str:
    """Grounds, words, fields, tables and bars of scrolling in this look."""
    return "\n".join((_grounds(look), _words(look), _fields(look), _tables(look), _bars(look)))


def _grounds(look: Look) -> str:
    colours = look.colours
    return f"""
        QWidget {{ color: {colours.ink}; }}
        QMainWindow, QDialog, QMessageBox, QScrollArea,
        QWidget[ground="surround"] {{ background: {colours.surround}; border: none; }}
        QWidget[ground="paper"] {{ background: {colours.paper}; border-radius: 6px; }}
        QWidget[ground="in hand"] {{ background: {colours.in_hand}; border-radius: 6px; }}
        QWidget[ground="finding"] {{ background: {colours.in_hand}; border-radius: 6px;
            border-left: 6px solid {colours.ink}; border-top-left-radius: 0;
            border-bottom-left-radius: 0; }}
        QWidget[ground="head"] {{ background: {colours.head}; color: {colours.head_ink}; }}
        QWidget[ground="foot"] {{ background: {colours.foot}; }}
        QWidget[ground="none"] {{ background: transparent; }}
        QToolTip {{ background: {colours.in_hand}; color: {colours.ink};
            border: 1px solid {colours.edge}; padding: 4px; }}
        QMenu {{ background: {colours.in_hand}; }}
        QMenu::item {{ padding: 8px 16px; }}
        QMenu::item:selected {{ background: {colours.ink}; color: {colours.in_hand}; }}
        QDialog QPushButton, QMessageBox QPushButton {{ background: {colours.in_hand};
            border: 1px solid {colours.edge}; border-radius: 4px;
            min-height: 42px; padding: 0 16px; }}
        QDialog QPushButton:focus, QMessageBox QPushButton:focus {{
            border: 3px solid {colours.ink}; padding: 0 14px; min-height: 38px; }}"""


def _words(look: Look) -> str:
    colours = look.colours
    sizes = "\n".join(
        f'QLabel[type="{size.value}"] {{ font-size: {look.px(size)}px; }}' for size in Size
    )
    return f"""{sizes}
        QLabel {{ background: transparent; }}
        QLabel[bold="true"] {{ font-weight: bold; }}
        QLabel[codes="true"] {{ font-family: "{families().codes}"; }}
        QLabel[ink="second"] {{ color: {colours.second_ink}; }}
        QLabel[ink="surround"] {{ color: {colours.surround_ink}; }}
        QLabel[ink="head"] {{ color: {colours.head_ink}; }}
        QLabel[ink="head second"] {{ color: {colours.head_second_ink}; }}"""


def _fields(look: Look) -> str:
    colours = look.colours
    return f"""
        QLineEdit, QPlainTextEdit, QSpinBox, QComboBox {{ background: {colours.in_hand};
            border: 1px solid {colours.edge}; border-radius: 4px; padding: 1px 9px;
            min-height: {look.grid(Size.PLAIN) + 24}px; font-size: {look.px(Size.PLAIN)}px;
            selection-background-color: {colours.ink};
            selection-color: {colours.in_hand};
            placeholder-text-color: {colours.second_ink}; }}
        QLineEdit:focus, QPlainTextEdit:focus, QSpinBox:focus, QComboBox:focus {{
            border: 2px solid {colours.ink}; padding: 0 8px; }}
        QLineEdit[scan="true"] {{ min-height: {look.grid(Size.LEAD) + 16}px;
            font-size: {look.px(Size.LEAD)}px; }}
        QLineEdit[scan="true"]:!focus {{ background: {colours.foot}; }}
        QCheckBox, QRadioButton {{ min-height: {look.px(44)}px; spacing: {Gap.SMALL}px; }}
        QCheckBox::indicator, QRadioButton::indicator {{ width: {look.px(20)}px;
            height: {look.px(20)}px; }}
        QCheckBox:focus, QRadioButton:focus {{ border: 2px solid {colours.ink};
            border-radius: 4px; }}"""


def _tables(look: Look) -> str:
    colours = look.colours
    return f"""
        QTableView, QListView, QTreeView {{ background: transparent; border: none;
            border-radius: 4px; selection-background-color: {colours.foot};
            selection-color: {colours.ink}; outline: none; }}
        QTableView:focus, QListView:focus, QTreeView:focus {{
            border: 2px solid {colours.ink}; }}
        QHeaderView {{ background: transparent; }}
        QHeaderView::section {{ background: transparent; border: none;
            color: {colours.second_ink}; font-size: {look.px(Size.SMALL)}px;
            padding: 4px 16px 4px 0; }}"""


def _bars(look: Look) -> str:
    colours = look.colours
    return f"""
        QScrollBar {{ background: transparent; border: none; }}
        QScrollBar:vertical {{ width: 12px; }}
        QScrollBar:horizontal {{ height: 12px; }}
        QScrollBar::handle {{ background: {colours.edge}; border-radius: 4px; margin: 2px; }}
        QScrollBar::handle:vertical {{ min-height: 44px; }}
        QScrollBar::handle:horizontal {{ min-width: 44px; }}
        QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
        QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
        QProgressBar {{ background: {colours.in_hand}; border: 1px solid {colours.edge};
            border-radius: 4px; text-align: center; }}
        QProgressBar::chunk {{ background: {colours.edge}; }}"""
