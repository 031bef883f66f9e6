namespace PlatformForge.Platforms.Specs;

/// <summary>Ends of a platform round which its bank turns.</summary>
public enum BankReturns
{
    None,

    /// <summary>At the lower chainage.</summary>
    Start,

    /// <summary>At the higher chainage.</summary>
    End,
    Both,
}
