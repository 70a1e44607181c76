"""What people do: one module a work step, one function a deed; the only writers."""
