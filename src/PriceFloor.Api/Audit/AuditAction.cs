namespace PriceFloor.Api.Audit;

/// <summary>What can be done to a document, a key or the whole store.</summary>
public enum AuditAction
{
    /// <summary>A document or a key was made, or a deleted document was stored again.</summary>
    Created,

    /// <summary>A document was changed.</summary>
    Changed,

    /// <summary>A document or a key was deleted.</summary>
    Deleted,

    /// <summary>A key got a new secret.</summary>
    Rotated,

    /// <summary>The store was copied.</summary>
    BackedUp,

    /// <summary>A backup was put in the store's place: newer entries were made after that.</summary>
    Restored,

    /// <summary>A deleted document was erased with its history, so no earlier entry mentions it.</summary>
    Forgotten,
}
