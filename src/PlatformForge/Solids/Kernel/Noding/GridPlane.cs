namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>A height plane over grid coordinates: z in mm = Z + X·u + Y·v with u and v counted in grid steps from the plan's origin.</summary>
internal readonly record struct GridPlane(double Z, double X, double Y)
{
    /// <summary>How much the height may change, in mm, when a plan point moves by one grid step along each axis.</summary>
    public double Slack => Math.Abs(X) + Math.Abs(Y);

    public bool IsSloped => X != 0 || Y != 0;

    public double At(double u, double v) => Z + (X * u) + (Y * v);

    /// <summary>Least and greatest height over a box.</summary>
    public (double Low, double High) Over(in PlanBox box)
    {
        double middle = At(0.5 * (box.LowU + box.HighU), 0.5 * (box.LowV + box.HighV));
        double half = 0.5 * ((Math.Abs(X) * (box.HighU - box.LowU)) + (Math.Abs(Y) * (box.HighV - box.LowV)));
        return (middle - half, middle + half);
    }

    public static GridPlane operator -(in GridPlane a, in GridPlane b) => new(a.Z - b.Z, a.X - b.X, a.Y - b.Y);
}

/// <summary>An axis-parallel box in grid coordinates.</summary>
internal readonly record struct PlanBox(double LowU, double LowV, double HighU, double HighV)
{
    public bool IsEmpty => LowU > HighU || LowV > HighV;

    public PlanBox Shared(in PlanBox other) =>
        new(Math.Max(LowU, other.LowU), Math.Max(LowV, other.LowV), Math.Min(HighU, other.HighU), Math.Min(HighV, other.HighV));
}
