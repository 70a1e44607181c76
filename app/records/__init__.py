"""What the book keeps: mapped tables, one file a family."""

from app.records.base import BASES, Fact, Record, Stay, moment_text, stronger_first
from app.records.bases import Base, BaseVersion, PutUp
from app.records.baths import Bath, Colourway, DyeLot, InBath, InLoad, Load, RecipeVersion
from app.records.deliveries import (
    Cone,
    Delivery,
    Fill,
    FillPart,
    Jar,
    Reading,
    Supplier,
    SupplierLot,
)
from app.records.holds import Clear, Hold
from app.records.journal import DeedRow, Head, Touched
from app.records.orders import (
    Customer,
    CustomerOrder,
    Kit,
    KitPattern,
    KitPlace,
    KitSubstitute,
    LineAgreed,
    Offer,
    OrderLine,
    Price,
    Second,
)
from app.records.people import Person, Personal, Setting
from app.records.plates import Bundle, OnBundle, Plate, PlateStay
from app.records.readings import (
    BathReading,
    FillReading,
    LoadReading,
    PutUpWeight,
    RoomReading,
)
from app.records.recipes import Component, Step, Zone
from app.records.reports import Cause, Counted, Photo, Recall, Report, Sighting, Stocktake
from app.records.shades import ChosenSwatch, GreyStep, ShadeReading, Verdict
from app.records.tags import PrintSheet, Tag, TagOn, TagsInHand
from app.records.weighing import BottleSet, OnBoard, Stock, WeighedFor, Weighing, WeighLine
from app.records.whereabouts import Whereabouts
from app.records.yarn import Draw, Part, Told, Waste, Yarn

__all__ = [
    "Cause", "ChosenSwatch", "Counted", "GreyStep", "KitPattern", "KitPlace", "KitSubstitute",
    "LineAgreed",
    "Offer", "Photo", "Recall", "Report", "RoomReading", "ShadeReading", "Sighting", "Stocktake",
    "TagsInHand", "Verdict",
    "BathReading", "BottleSet", "Component", "FillReading", "LoadReading", "OnBoard", "Step",
    "Stock", "WeighLine", "WeighedFor", "Weighing", "Zone",
    "BASES", "Base", "BaseVersion", "Bath", "Bundle", "Clear", "Colourway", "Cone", "Customer",
    "CustomerOrder", "Price", "Second",
    "DeedRow", "Delivery", "Draw", "DyeLot", "Fact", "Fill", "FillPart", "Head", "Hold", "InBath",
    "InLoad", "Jar", "Kit", "Load", "OnBundle", "OrderLine", "Part", "Person", "Personal", "Plate",
    "PlateStay", "PrintSheet", "PutUp", "PutUpWeight", "Reading", "RecipeVersion", "Record",
    "Setting", "Stay",
    "Supplier", "SupplierLot", "Tag", "TagOn", "Told", "Touched", "Waste", "Whereabouts", "Yarn",
    "moment_text", "stronger_first",
]
