"""The packing bench: what was ordered goes into its parcel by scan, and leaves."""
