package batch

import "jarmark/internal/kit/source"

// Keys explains every key of a batch file, as its reader knows them.
func Keys() []source.Key { return append(source.Keys(rawBatch{}), partKeys()...) }

// KitchenKeys explains every key of kitchen.toml.
func KitchenKeys() []source.Key { return append(source.Keys(rawKitchen{}), partKeys()...) }

// partKeys are those of one part in a list `contains`.
func partKeys() []source.Key {
	keys := source.Keys(rawPart{})
	for i := range keys {
		keys[i].Table = "contains"
	}
	return keys
}
