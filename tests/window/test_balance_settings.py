from PySide6.QtCore import QSettings

from app.scanning.balance_ear import Sends, Wiring
from app.window.balance_settings import BalanceSettings


def at(path):
    return BalanceSettings(QSettings(str(path), QSettings.Format.IniFormat))


def test_the_wire_and_the_balance_in_use_are_kept_with_this_computer(qapp, tmp_path):
    kept = at(tmp_path / "computer.ini")
    assert (kept.used, kept.wiring) == (0, Wiring())
    wiring = Wiring("COM3", 2400, "7E1", Sends.PRINTED, "P\\r\\n", "?", 3)
    kept.wiring, kept.used = wiring, 3
    again = at(tmp_path / "computer.ini")
    assert (again.used, again.wiring) == (3, wiring)


def test_nonsense_in_the_file_is_no_wire_and_no_balance(qapp, tmp_path):
    file = QSettings(str(tmp_path / "computer.ini"), QSettings.Format.IniFormat)
    for nonsense in ('{"colour": 1}', "[1]", "{", '{"frame": "9X9"}', '{"speed": "quick"}'):
        file.setValue("wiring", nonsense)
        file.setValue("balance", "three")
        assert (BalanceSettings(file).used, BalanceSettings(file).wiring) == (0, Wiring())
