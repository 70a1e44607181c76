"""Pictures of shade, for every bench that looks at lots."""
