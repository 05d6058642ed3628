"""The one place that knows the solid kernel (manifold3d): cutting, measuring, reading back."""
