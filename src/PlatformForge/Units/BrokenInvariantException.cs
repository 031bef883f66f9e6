namespace PlatformForge.Units;

/// <summary>A promise of this program's own was broken: never the user's fault. The message names room and law.</summary>
public sealed class BrokenInvariantException : Exception
{
    public BrokenInvariantException()
    {
    }

    public BrokenInvariantException(string message)
        : base(message)
    {
    }

    public BrokenInvariantException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
